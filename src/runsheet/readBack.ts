import { sum } from "../core/statistics/sum";
import type { CellValue } from "../sheet/sheet";
import { AT, DATE, kindOfKey, lotIn, type RowKind, scentIn, unitIn } from "./layout";
import { CHOICES, type WeightUnit } from "./settings";

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
  readonly pots: readonly PouredPot[];
  /** Days of cure by scent. */
  readonly cure: ReadonlyMap<string, number>;
  /** What is written on the sheet and cannot be, by row. */
  readonly wrong: readonly string[];
}

/**
 * Reads a run sheet as it is now, by its column of keys: rows put in between, or blocks moved, change nothing.
 * Undefined when the cells are no run sheet.
 * @param rows the cells of the sheet from A1 on
 */
export function readBack(rows: readonly (readonly CellValue[])[]): PouredRun | undefined {
  const lot = lotIn(rows[0]?.[AT.name]);
  const date = rows.find((row) => row[AT.name] === DATE)?.[1];
  const unit = CHOICES.unit.find((one) => rows.some((row) => unitIn(row[AT.name]) === one));
  if (lot === undefined || typeof date !== "number" || unit === undefined) return undefined;
  const pots: {
    title: string;
    scent: string;
    parts: PouredPart[];
    remark: string;
    steps: Map<string, string>;
    lines: PouredLine[];
  }[] = [];
  const cure = new Map<string, number>();
  const wrong: string[] = [];
  for (const [r, row] of rows.entries()) {
    const kind = kindOfKey(row[AT.key]);
    if (kind === "pot")
      pots.push({
        title: String(row[AT.name]),
        scent: scentIn(row[AT.name]),
        parts: [],
        remark: "",
        steps: new Map(),
        lines: [],
      });
    const pot = pots.at(-1);
    if (!pot || !kind) continue;
    const label = String(row[AT.name] ?? "");
    const check = (column: number, name: string, candles?: number) => {
      const cell = row[column] ?? null;
      const isCount = candles !== undefined;
      const isRight =
        typeof cell === "number" && cell >= 0 && (!isCount || (cell <= candles && Number.isInteger(cell)));
      if (cell === null || cell === "" || isRight) return;
      if (isCount && typeof cell === "number" && cell > candles) {
        wrong.push(`Row ${r + 1}, ${name}: ${cell} are more than the count of ${candles}; raise the count or mend it`);
        return;
      }
      const shown = typeof cell === "object" ? cell.error : String(cell);
      const wanted = isCount ? "whole number" : "number of 0 or more";
      wrong.push(`Row ${r + 1}, ${name}: "${shown.slice(0, 40)}" is no ${wanted}; mend it or clear it`);
    };
    if (isPart(kind)) {
      check(AT.actual, "actual weight");
      const [planned, actual] = [numberIn(row[AT.planned]) ?? 0, numberIn(row[AT.actual])];
      pot.parts.push({ sort: kind, label, row: r + 1, planned, actual });
    } else if (kind === "weighed") pot.remark = textIn(row[AT.planned]);
    else if (kind === "step") pot.steps.set(label, String(row[AT.target] ?? ""));
    else if (kind === "cure") cure.set(label, numberIn(row[AT.days]) ?? 0);
    else if (kind === "vessel") {
      const count = numberIn(row[AT.count]) ?? 0;
      check(AT.good, "good ones", count);
      check(AT.weighed, "weight of one");
      const [good, weighed] = [numberIn(row[AT.good]), numberIn(row[AT.weighed])];
      pot.lines.push({ row: r + 1, vessel: label, count, fill: numberIn(row[AT.fill]) ?? 0, good, weighed });
    }
  }
  return {
    lot,
    date,
    unit,
    pots: pots.map((pot) => ({ ...pot, wax: together(pot.parts, "wax"), scentWeight: together(pot.parts, "scent") })),
    cure,
    wrong,
  };
}

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
