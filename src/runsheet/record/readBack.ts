import { sum } from "../../core/statistics/sum";
import type { CellValue } from "../../sheet/sheet";
import { percent } from "../percent";
import type { WeightUnit } from "../settings";
import { AT, DATE, kindOfKey, lotIn, type RowKind, scaleOn, scentIn } from "../sheet/layout";

/** Candles of one kind in one pot, as planned and as poured. What is not written on the sheet is undefined. */
export interface PouredLine {
  /** Its row on the sheet, from 1. */
  readonly row: number;
  readonly vessel: string;
  readonly count: number;
  readonly fill: number;
  readonly good: number | undefined;
  /** Weight of one candle's wax and scent, as weighed. */
  readonly weighed: number | undefined;
}

/** An ingredient of one pot, as planned and as weighed. */
export interface PouredPart extends Weighed {
  readonly sort: "wax" | "scent" | "additive";
  /** As it stands on the sheet: `Scent: Cedar`. */
  readonly label: string;
  /** Its row on the sheet, from 1. */
  readonly row: number;
}

/** One pot, as planned and as weighed. */
export interface PouredPot {
  /** As it stands on the sheet: `Cedar: pot 1 of 2`. */
  readonly title: string;
  readonly scent: string;
  /** The load that its shares ask for, `6 % of wax`; empty without scent. */
  readonly load: string;
  readonly parts: readonly PouredPart[];
  readonly wax: Weighed;
  readonly scentWeight: Weighed;
  /** What stands beside the load as weighed: the limits it passes. */
  readonly remark: string;
  /** Temperatures and times, by name. */
  readonly steps: ReadonlyMap<string, string>;
  readonly lines: readonly PouredLine[];
}

export interface Weighed {
  readonly planned: number;
  /** Undefined until every part of it is written down. */
  readonly actual: number | undefined;
}

export interface PouredRun {
  readonly lot: string;
  /** Spreadsheet serial of the day. */
  readonly date: number;
  /** Of its weights. */
  readonly unit: WeightUnit;
  /** What the scale reads to, as the head says; 0 where it does not. */
  readonly division: number;
  readonly pots: readonly PouredPot[];
  /** Days of cure by scent. */
  readonly cure: ReadonlyMap<string, number>;
  /** What is written on the sheet and cannot be, by row. */
  readonly wrong: readonly string[];
  /** Of it what the plan cannot do without: its weights stand at 0 here. */
  readonly unplanned: readonly string[];
}

/**
 * Reads a run sheet as it is now, by its column of keys: rows put in between, or blocks moved, change nothing.
 * Undefined when the cells are no run sheet.
 * @param rows the cells of the sheet from A1 on
 */
export function readBack(rows: readonly (readonly CellValue[])[]): PouredRun | undefined {
  const lot = lotIn(rows[0]?.[AT.name]);
  const date = rows.find((row) => row[AT.name] === DATE)?.[1];
  const scale = scaleOn(rows);
  if (lot === undefined || typeof date !== "number" || scale === undefined) return undefined;
  const { unit } = scale;
  const division = numberIn(scale.division) ?? 0;
  const pots: {
    title: string;
    scent: string;
    shares: Map<string, number>;
    parts: PouredPart[];
    remark: string;
    steps: Map<string, string>;
    lines: PouredLine[];
  }[] = [];
  const cure = new Map<string, number>();
  const wrong: string[] = [];
  const unplanned: string[] = [];
  for (const [r, row] of rows.entries()) {
    const kind = kindOfKey(row[AT.key]);
    if (kind === "pot")
      pots.push({
        title: String(row[AT.name]),
        scent: scentIn(row[AT.name]),
        shares: new Map(),
        parts: [],
        remark: "",
        steps: new Map(),
        lines: [],
      });
    const pot = pots.at(-1);
    if (!pot || !kind) continue;
    const label = String(row[AT.name] ?? "");
    /** The number in a cell that may be blank; what else stands there and is not fit is noted. */
    const optional = (column: number, name: string, wanted: string, isFit: (value: number) => boolean) => {
      const cell = row[column] ?? null;
      if (isBlank(cell)) return undefined;
      if (typeof cell === "number" && isFit(cell)) return cell;
      wrong.push(`Row ${r + 1}, ${name}: ${quoted(cell)} is no ${wanted}; fix it or clear it`);
      return undefined;
    };
    /** The number in a cell of the plan, without which nothing can be said of the row. */
    const needed = (column: number, name: string, wanted: string, isFit: (value: number) => boolean): number => {
      const cell = row[column] ?? null;
      if (typeof cell === "number" && isFit(cell)) return cell;
      const text = `Row ${r + 1}, ${name}: ${isBlank(cell) ? "blank" : quoted(cell)} is no ${wanted}; fix it`;
      wrong.push(text);
      unplanned.push(text);
      return 0;
    };
    if (isPart(kind)) {
      const planned = needed(AT.planned, "to weigh", "number of 0 or more", atLeastZero);
      const actual = optional(AT.actual, "actual weight", "number of 0 or more", atLeastZero);
      pot.parts.push({ sort: kind, label, row: r + 1, planned, actual });
      const [share, basis] = [numberIn(row[AT.share]) ?? 0, textIn(row[AT.basis])];
      if (kind === "scent" && share > 0) pot.shares.set(basis, (pot.shares.get(basis) ?? 0) + share);
    } else if (kind === "weighed") pot.remark = [pot.remark, textIn(row[AT.planned])].filter(Boolean).join(" ");
    else if (kind === "step") pot.steps.set(label, String(row[AT.target] ?? ""));
    else if (kind === "cure") cure.set(label, numberIn(row[AT.days]) ?? 0);
    else if (kind === "vessel") {
      const count = needed(AT.count, "count", "whole number", isCount);
      const fill = needed(AT.fill, "fill", "number above 0", aboveZero);
      const good = optional(AT.good, "good candles", "whole number", isCount);
      if (good !== undefined && good > count) {
        wrong.push(
          `Row ${r + 1}, good candles: ${good} are more than the count of ${count}; raise the count or fix it`,
        );
      }
      const weighed = optional(AT.weighed, "weight of one", "number above 0", aboveZero);
      pot.lines.push({ row: r + 1, vessel: label, count, fill, good, weighed });
    }
  }
  return {
    lot,
    date,
    unit,
    division,
    pots: pots.map(({ shares, ...pot }) => ({
      ...pot,
      load: [...shares].map(([basis, share]) => `${percent(share)} % ${basis}`).join(" + "),
      wax: together(pot.parts, "wax"),
      scentWeight: together(pot.parts, "scent"),
    })),
    cure,
    wrong,
    unplanned,
  };
}

const isBlank = (cell: CellValue): boolean => cell === null || (typeof cell === "string" && cell.trim() === "");
const quoted = (cell: CellValue): string =>
  `"${(typeof cell === "object" && cell !== null ? cell.error : String(cell)).slice(0, 40)}"`;
const atLeastZero = (value: number): boolean => value >= 0;
const aboveZero = (value: number): boolean => value > 0;
const isCount = (value: number): boolean => value >= 0 && Number.isInteger(value);

/** Whether anything was written on the sheet after the pour. */
export function isPoured({ pots }: PouredRun): boolean {
  return pots.some(
    ({ parts, lines }) =>
      parts.some(({ actual }) => actual !== undefined) ||
      lines.some(({ good, weighed }) => good !== undefined || weighed !== undefined),
  );
}

const isPart = (kind: RowKind): kind is PouredPart["sort"] => kind === "wax" || kind === "scent" || kind === "additive";

function numberIn(cell: CellValue | undefined): number | undefined {
  return typeof cell === "number" ? cell : undefined;
}

function textIn(cell: CellValue | undefined): string {
  return typeof cell === "string" ? cell.trim() : "";
}

/** All parts of a sort together. */
function together(parts: readonly PouredPart[], sort: PouredPart["sort"]): Weighed {
  const own = parts.filter((part) => part.sort === sort);
  const actual = own.map((part) => part.actual);
  return {
    planned: sum(own.map(({ planned }) => planned)),
    actual: actual.length === 0 || actual.includes(undefined) ? undefined : sum(actual as number[]),
  };
}
