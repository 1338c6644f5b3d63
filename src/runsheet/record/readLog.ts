import type { CellValue } from "../../sheet/sheet";
import { CHOICES, type WeightUnit } from "../settings";

/** The runs log as it stands in the workbook. */
export interface LogTable {
  readonly headings: readonly string[];
  readonly rows: readonly (readonly CellValue[])[];
}

/** One pour of a vessel: a row of the log, which is the mean of the candles that were weighed for it. */
interface LoggedPour {
  readonly lot: string;
  readonly vessel: string;
  readonly weighed: number;
  readonly water: number | undefined;
  /** Wax and scent planned for one candle. */
  readonly planned: number | undefined;
  readonly unit: WeightUnit | undefined;
}

/** The rows of the log in which a candle was weighed. */
export function loggedPours({ headings, rows }: LogTable): LoggedPour[] {
  const column = (heading: string) => headings.indexOf(heading);
  const at = {
    lot: column("Lot"),
    vessel: column("Vessel"),
    weighed: column("Weighed each"),
    water: column("Water weight"),
    candles: column("Candles"),
    wax: column("Wax planned"),
    scent: column("Scent planned"),
    unit: column("Weights in"),
  };
  return rows.flatMap((cells) => {
    const number = (at: number) => (typeof cells[at] === "number" ? cells[at] : undefined);
    const [weighed, wax, scent, candles] = [at.weighed, at.wax, at.scent, at.candles].map(number);
    if (weighed === undefined || !(weighed > 0)) return [];
    const planned = wax !== undefined && candles ? (wax + (scent ?? 0)) / candles : undefined;
    const water = number(at.water);
    return [
      {
        lot: String(cells[at.lot] ?? "").trim(),
        vessel: String(cells[at.vessel] ?? ""),
        weighed,
        water: water !== undefined && water > 0 ? water : undefined,
        planned,
        unit: CHOICES.unit.find((unit) => unit === cells[at.unit]),
      },
    ];
  });
}

/** The lots that are in the log. */
export function loggedLots({ headings, rows }: LogTable): string[] {
  const column = headings.indexOf("Lot");
  return rows.map((row) => String(row[column] ?? "").trim());
}
