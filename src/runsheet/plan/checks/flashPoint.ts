import { list } from "../../../core/check/list";
import type { Problem } from "../../problem";
import type { Temperature } from "../../tables/readTemperature";
import type { ScentNotes } from "../../tables/scents";
import { type Oil, shortName } from "../oils";
import type { Remark } from "./limits";

/** A flash point that holds for a pot. */
interface Flash {
  /** The oil whose it is; empty for the scent of the run itself. */
  readonly of: string;
  readonly flash: Temperature;
}

function flashesOf(own: ScentNotes | undefined, oils: readonly Oil[]): Flash[] {
  const rows = [{ of: "", notes: own }, ...oils.map(({ name, notes }) => ({ of: name, notes }))];
  return rows.flatMap(({ of, notes }, i) =>
    notes?.flash && (i === 0 || notes !== own) ? [{ of, flash: notes.flash }] : [],
  );
}

/** What is sure of a flash point: at least this; for `< 60` all there is. */
const lowest = ({ least, most }: Pick<Temperature, "least" | "most">): number =>
  Number.isFinite(least) ? least : most;

/** The words of the lowest flash point that is known; empty when there is none. */
export function flashWords(own: ScentNotes | undefined, oils: readonly Oil[]): string {
  const [first] = flashesOf(own, oils).sort((a, b) => orLast(a.flash) - orLast(b.flash));
  return first?.flash.words ?? "";
}
const orLast = (flash: Temperature): number => (flash.doubt ? Number.MAX_VALUE : lowest(flash));

/** A temperature at which scent is in the pot. */
interface Hot {
  readonly field: "add" | "pour";
  readonly name: string;
  readonly temperature: Temperature;
}

/** A scent in the pot with the rows that may know its flash point. */
export interface FlashOf {
  readonly scent: string;
  readonly own: ScentNotes | undefined;
  readonly oils: readonly Oil[];
}

/**
 * Compares every temperature at which scent is in the pot with the lowest flash point of the scent and its oils:
 * said where it is reached, and where the two cannot be compared.
 */
export function flashRemarks(own: ScentNotes | undefined, oils: readonly Oil[]): Remark[] {
  const base = own ?? oils.find(({ notes }) => notes?.flash)?.notes;
  if (base === undefined || oils.length === 0) return [];
  const remark = (text: string, field: "add" | "pour" | "flash", { row } = base): Remark => {
    return { table: "scents", row, field, text };
  };
  const hot = hotOf(own);
  const flashes = flashesOf(own, oils);
  if (hot.length === 0 && flashes.length === 0) return [];
  const known = flashes.filter(({ flash }) => !flash.doubt).sort((a, b) => lowest(a.flash) - lowest(b.flash));
  const [first] = known;
  const overOf = ({ flash }: Flash) => hot.filter(({ temperature }) => isReached(flash, temperature));
  const reached = [...known, ...flashes].find((one) => overOf(one).length > 0);
  const over = reached ? overOf(reached) : [];
  const doubts = doubtsOf(
    flashes.filter((one) => one !== reached),
    over.length === hot.length ? [] : known,
    hot.filter((one) => !over.includes(one)),
  );
  const found: Remark[] = [];
  if (reached && over.length > 0) {
    const at = over.map(({ name, temperature }) => `${name} ${short(temperature)}`).join(", ");
    const isEither = [reached.flash, ...over.map(({ temperature }) => temperature)].some(({ either }) => either);
    const alike = isEither ? "in C and in F alike " : "";
    const text = `${at}, ${alike}at or above the flash point${whose(reached.of)}, ${short(reached.flash)}; keep below it, or follow the supplier's documents`;
    found.push(remark(text, (over[0] as Hot).field));
  }
  if (doubts.length > 0) found.push(remark(`${doubts.join(", ")}: not compared`, "flash"));
  if (first && over.length === 0 && isAddingUnknown(own, first.flash)) {
    const text = `temperature of adding not known: not compared with the flash point${whose(first.of)}, ${short(first.flash)}`;
    found.push(remark(text, "add"));
  }
  const isMisread = [base, ...oils.map(({ notes }) => notes)].some((notes) => notes?.misread.has("flash"));
  const bare = oils.length === 1 && flashes.length > 0 ? [] : oils.filter(({ notes }) => !notes?.flash);
  if (hot.length > 0 && bare.length > 0 && !isMisread) {
    const names = bare.map(({ name }) => shortName(name));
    const of = oils.length === 1 ? "" : ` of ${list(names, "and")}`;
    found.push(remark(`flash point${of} not known: not compared`, "flash", bare[0]?.notes ?? base));
  }
  return found;
}

/**
 * The scents of which neither a flash point nor a temperature is known, so that nothing was compared: one sentence for
 * all of them. Nothing is said of a table that has no place for a flash point, but for the wax of a row that is heated.
 */
export function unknownFlashes(all: readonly FlashOf[]): Problem[] {
  const bare = all.filter(({ own, oils }) => {
    const rows = [own, ...oils.map(({ notes }) => notes)];
    const isSaid = hotOf(own).length > 0 || rows.some((notes) => notes?.flash || notes?.misread.has("flash"));
    return oils.length > 0 && !isSaid && rows.some((notes) => notes && (notes.hasFlash || notes.melt));
  });
  const [first] = bare.flatMap(({ own, oils }) => own ?? oils.flatMap(({ notes }) => notes ?? [])[0] ?? []);
  if (first === undefined) return [];
  const names = [...new Set(bare.map(({ scent }) => shortName(scent)))];
  const text = `${list(names, "and")}: flash point not known, nor the temperatures of adding and pouring: not compared`;
  return [{ table: "scents", row: first.row, field: "flash", severity: "warning", text, safety: true }];
}

const hotOf = (own: ScentNotes | undefined): Hot[] =>
  (["add", "pour"] as const).flatMap((field) => {
    const temperature = own?.[field];
    return temperature ? [{ field, temperature, name: field === "add" ? "added at" : "poured at" }] : [];
  });

/** Scent is added hotter than it is poured, and no hotter than the wax was melted. */
function isAddingUnknown(own: ScentNotes | undefined, flash: Temperature): boolean {
  const isMeltedBelow = own?.melt !== undefined && !own.melt.doubt && highest(own.melt) < lowest(flash);
  return own?.add === undefined && !isMeltedBelow;
}

/** What cannot be compared, and why. */
function doubtsOf(
  /** Those that are not said to be reached. */
  flashes: readonly Flash[],
  /** Those that are understood; none where every temperature is said to reach one. */
  compared: readonly Flash[],
  /** Those that are not said to reach one. */
  hot: readonly Hot[],
): string[] {
  const unread = flashes.flatMap(({ of, flash }) =>
    flash.doubt ? [`flash point${whose(of)} "${short(flash)}" (${flash.doubt})`] : [],
  );
  const bottomless = compared.flatMap(({ of, flash }) =>
    flash.least === Number.NEGATIVE_INFINITY ? [`flash point${whose(of)} "${short(flash)}" (no lowest value)`] : [],
  );
  const doubtful = hot.flatMap(({ name, temperature }) =>
    temperature.doubt ? [`${name} "${short(temperature)}" (${temperature.doubt})`] : [],
  );
  // What only one end is known of may still reach it.
  const open = hot.filter(({ temperature }) => !temperature.doubt && isOpen(temperature));
  const topless = open.map(({ name, temperature }) => `${name} "${short(temperature)}" (no highest value)`);
  const isAnyGiven = flashes.length > 0 || compared.length > 0;
  const isAnyKnown = [...flashes, ...compared].some(({ flash }) => !flash.doubt);
  return [...unread, ...bottomless, ...(isAnyGiven ? doubtful : []), ...(isAnyKnown ? topless : [])];
}

const whose = (of: string): string => (of === "" ? "" : ` of ${shortName(of)}`);

/** What is sure of a temperature: at most this; for `> 65` all there is. */
const highest = ({ least, most }: Pick<Temperature, "least" | "most">): number =>
  Number.isFinite(most) ? most : least;
/** Whether a temperature surely reaches a flash point, in whichever unit they are where they name none. */
function isReached(flash: Temperature, temperature: Temperature): boolean {
  const readings = (one: Temperature) => one.either ?? (one.doubt ? [] : [one]);
  const [points, tops] = [readings(flash).map(lowest), readings(temperature).map(highest)];
  return points.length > 0 && tops.length > 0 && Math.min(...tops) >= Math.max(...points);
}
const isOpen = ({ most }: Pick<Temperature, "most">): boolean => most === Number.POSITIVE_INFINITY;
const short = ({ words }: Temperature): string => shortName(words);
