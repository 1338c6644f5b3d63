import type { Basis } from "../../core/scent/basis";
import type { PourRow } from "../plan/readRows";
import { headingWords } from "./headings/headingWords";
import { fitsOf, type KindName } from "./kinds";
import { headingOf, type Problem, readersOf, type TableRows } from "./tableReader";

/** Scents that are numbers as loads are: a column of loads that is read as names. */
export function loadsAsScents(table: TableRows<"pour"> | TableRows<"scents">): Problem[] {
  const readers = readersOf<KindName>(table as TableRows<KindName>);
  const names = readers.map((reader) => reader.text("scent")).filter((text) => text !== "");
  const isLoad = (text: string) => /%$/.test(text) || (Number(text) > 0 && Number(text) < 0.3);
  if (names.length === 0 || !names.every(isLoad)) return [];
  const heading = headingOf(table as TableRows<KindName>, "scent");
  const text = `The column "${heading}" holds shares and is read as the names of the scents; under Columns choose it as Load, and another as Scent`;
  return [{ kind: table.kind, role: "scent", text, stops: true }];
}

/** Limits whose heading does not say whose they are: held as the wax maximum, which is the stricter one. */
export function unsureLimits(table: TableRows<"scents">): Problem[] {
  const heading = headingOf(table, "waxMaximum");
  if (!fitsOf("scents", heading).some(({ role, isUnsure }) => role === "waxMaximum" && isUnsure)) return [];
  const text = `The column "${heading}" does not say whose limit it is and is held as the wax maximum, the stricter one; write Wax maximum or Product limit in its heading`;
  return [{ kind: "scents", role: "waxMaximum", text, stops: false }];
}

/** Headings that name another basis than the one by which their shares are taken. */
export function otherBases(
  pour: TableRows<"pour">,
  scents: TableRows<"scents"> | undefined,
  rows: readonly PourRow[],
): Problem[] {
  const said = (
    table: TableRows<KindName> | undefined,
    role: "load" | "waxMaximum" | "productLimit",
  ): Basis | undefined => table && headingWords(headingOf(table, role)).basis;
  const own = readersOf(pour);
  const loads = (["pour", "scents"] as const).flatMap((kind): Problem[] => {
    const table = (kind === "pour" ? pour : scents) as TableRows<KindName> | undefined;
    const basis = said(table, "load");
    const isHere = (row: PourRow) => (kind === "pour") === !own[row.row]?.isBlank("load");
    const row = rows.find((one) => one.isLoadGiven && isHere(one) && one.basis !== basis);
    if (!table || basis === undefined || !row) return [];
    const text = `The heading ${headingOf(table, "load")} says ${basis}, and ${row.scent || row.vessel} is taken ${row.basis}; write the basis in a column Basis, or set it under Settings`;
    return [{ kind, role: "load", text, stops: true }];
  });
  const limits = (["waxMaximum", "productLimit"] as const).flatMap((role): Problem[] => {
    const taken = role === "waxMaximum" ? "of wax" : "of total";
    const basis = said(scents as TableRows<KindName> | undefined, role);
    if (basis === undefined || basis === taken) return [];
    const text = `The heading ${headingOf(scents as TableRows<"scents">, role)} says ${basis}; it is held as a share ${taken}, as such limits are`;
    return [{ kind: "scents", role, text, stops: false }];
  });
  return [...loads, ...limits];
}
