import { list } from "../../../core/check/list";
import type { Temperature } from "../../tables/readTemperature";
import type { ScentNotes } from "../../tables/scents";
import { type Oil, shortName } from "../oils";
import type { Remark } from "./limits";

/** The flash points that hold for a pot, with the oil whose they are; empty for the scent of the run itself. */
function flashesOf(own: ScentNotes | undefined, oils: readonly Oil[]): { of: string; flash: Temperature }[] {
  const rows = [{ of: "", notes: own }, ...oils.map(({ name, notes }) => ({ of: name, notes }))];
  return rows.flatMap(({ of, notes }, i) =>
    notes?.flash && (i === 0 || notes !== own) ? [{ of, flash: notes.flash }] : [],
  );
}

/** What is sure of a flash point: at least this; for `< 60` all there is. */
const lowest = ({ least, most }: Temperature): number => (Number.isFinite(least) ? least : most);

/** The words of the lowest flash point that is known; empty when there is none. */
export function flashWords(own: ScentNotes | undefined, oils: readonly Oil[]): string {
  const [first] = flashesOf(own, oils).sort((a, b) => orLast(a.flash) - orLast(b.flash));
  return first?.flash.words ?? "";
}
const orLast = (flash: Temperature): number => (flash.doubt ? Number.MAX_VALUE : lowest(flash));

/**
 * Compares every temperature at which scent is in the pot with the lowest flash point of the scent and its oils:
 * said where it is reached, and where the two cannot be compared.
 */
export function flashRemarks(own: ScentNotes | undefined, oils: readonly Oil[]): Remark[] {
  const base = own ?? oils.find(({ notes }) => notes?.flash)?.notes;
  if (base === undefined || oils.length === 0) return [];
  const hot = (["add", "pour"] as const).flatMap((field) => {
    const temperature = own?.[field];
    return temperature ? [{ field, temperature, name: field === "add" ? "added at" : "poured at" }] : [];
  });
  const remark = (text: string, field: "add" | "pour" | "flash", { row } = base): Remark => {
    return { table: "scents", row, field, text };
  };
  const flashes = flashesOf(own, oils);
  if (hot.length === 0 && flashes.length === 0) return [];
  const bare = oils.length === 1 && flashes.length > 0 ? [] : oils.filter(({ notes }) => !notes?.flash);
  const isMisread = base.misread.has("flash") || oils.some(({ notes }) => notes?.misread.has("flash"));
  const names =
    oils.length === 1
      ? ""
      : ` of ${list(
          bare.map(({ name }) => shortName(name)),
          "and",
        )}`;
  const unknown =
    bare.length === 0 || isMisread
      ? []
      : [remark(`flash point${names} not known: not compared`, "flash", bare[0]?.notes ?? base)];
  const whose = (of: string) => (of === "" ? "" : ` of ${shortName(of)}`);
  const known = flashes.filter(({ flash }) => !flash.doubt).sort((a, b) => lowest(a.flash) - lowest(b.flash));
  const [first] = known;
  const over = first ? hot.filter(({ temperature }) => highest(temperature) >= lowest(first.flash)) : [];
  const reached = over.map(({ name, temperature }) => `${name} ${short(temperature)}`).join(", ");
  // Scent is added hotter than it is poured, and no hotter than the wax was melted.
  const isMeltedBelow = (flash: Temperature) =>
    own?.melt !== undefined && !own.melt.doubt && highest(own.melt) < lowest(flash);
  const isAddKnown = hot.some(({ field }) => field === "add");
  const missing =
    first && over.length === 0 && !isAddKnown && !isMeltedBelow(first.flash)
      ? [
          remark(
            `temperature of adding not known: not compared with the flash point${whose(first.of)}, ${short(first.flash)}`,
            "add",
          ),
        ]
      : [];
  // What only one end is known of may still reach it.
  const open = hot.filter((one) => !over.includes(one) && !one.temperature.doubt && isOpen(one.temperature));
  const doubts = [
    ...flashes.flatMap(({ of, flash }) =>
      flash.doubt ? [`flash point${whose(of)} "${short(flash)}" (${flash.doubt})`] : [],
    ),
    ...(over.length === hot.length ? [] : known).flatMap(({ of, flash }) =>
      flash.least === Number.NEGATIVE_INFINITY ? [`flash point${whose(of)} "${short(flash)}" (no lowest value)`] : [],
    ),
    ...(flashes.length === 0
      ? []
      : hot.flatMap(({ name, temperature }) =>
          temperature.doubt ? [`${name} "${short(temperature)}" (${temperature.doubt})`] : [],
        )),
    ...(first ? open.map(({ name, temperature }) => `${name} "${short(temperature)}" (no highest value)`) : []),
  ];
  const field = over[0]?.field ?? "flash";
  return [
    ...(first && over.length > 0
      ? [
          remark(
            `${reached}, at or above the flash point${whose(first.of)}, ${short(first.flash)}; keep below it, or follow the supplier's documents`,
            field,
          ),
        ]
      : []),
    ...(doubts.length > 0 ? [remark(`${doubts.join(", ")}: not compared`, "flash")] : []),
    ...missing,
    ...(hot.length === 0 ? [] : unknown),
  ];
}

/** What is sure of a temperature: at most this; for `> 65` all there is. */
const highest = ({ least, most }: Temperature): number => (Number.isFinite(most) ? most : least);
const isOpen = ({ most }: Temperature): boolean => most === Number.POSITIVE_INFINITY;
const short = ({ words }: Temperature): string => shortName(words);
