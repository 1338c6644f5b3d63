import { describe, expect, it } from "vitest";
import { matchColumns, TABLE_TYPES, type TableTypeId } from "../../../src/runsheet/tables/registry";
import { unreadColumns } from "../../../src/runsheet/tables/unreadColumns";
import type { CellValue } from "../../../src/sheet/sheet";

/** What may be asked about the last of these columns, with these cells below it; each with whether it stops the run. */
function asked(type: TableTypeId, headings: string[], ...cells: CellValue[]): string[] {
  const rows = cells.map((cell) => headings.map((_, i) => (i === headings.length - 1 ? cell : null)));
  const columns = unreadColumns(
    TABLE_TYPES[type],
    { type, headings, rows, columns: matchColumns(type, headings) },
    "g",
  );
  const last = columns.find(({ name }) => name === headings.at(-1));
  return last?.questions.map(({ text }) => text) ?? [];
}
const BATCH = ["Vessel", "Scent", "Quantity"];
const orLeave = (name: string, what: string) =>
  `The column "${name}" is not read. If it is ${what}, choose it so under Columns; if not, leave it out`;

describe("a column that nobody reads", () => {
  it("of the batch is asked about by what it may be", () => {
    expect(asked("pour", [...BATCH, "Max FO load"])).toContain(
      'The column "Max FO load" is not read: a limit is no load. Limits stand in the table of scents; write it there, or leave it out',
    );
    expect(asked("pour", [...BATCH, "Scent strength"])).toContain(orLeave("Scent strength", "the load"));
    expect(asked("pour", [...BATCH, "Oomph"], 0.06)).toContain(orLeave("Oomph", "the load"));
    expect(asked("pour", [...BATCH, "FO (g)"], 6)).toContain(
      'The column "FO (g)" is a weight of scent, and no load is read in this table: write the load as a share of wax or of total, as POUR.LOADFROM works it out, or leave the column out',
    );
    expect(asked("pour", [...BATCH, "Soy wax (g)"], 100)).toContain(
      'The column "Soy wax (g)" is a weight of wax alone, and no fill weight is read: write the weight of wax and scent together, or leave the column out',
    );
    expect(asked("pour", [...BATCH, "Portion (g)"], 100)).toContain(
      orLeave("Portion (g)", "the fill weight or the water weight"),
    );
    expect(asked("pour", [...BATCH, "Density"], 0.86)).toContain(orLeave("Density", "the wax factor"));
    expect(asked("pour", [...BATCH, "Water height"])).toContain(orLeave("Water height", "the water weight"));
    expect(asked("pour", [...BATCH, "Wick stickers"])).toEqual([]);
    expect(asked("pour", [...BATCH, "Wick"])).toEqual([
      'The column "Wick" is not read here: the approved wick of a vessel stands in the table of vessels. Write it there, or leave it out',
    ]);
  });

  it("of the batch is not asked about by weights that follow from others, or by dye", () => {
    for (const heading of ["Total (g)", "Lid weight (g)", "Jar weight (g)", "Per pot (g)"]) {
      expect(asked("pour", [...BATCH, "Fill (g)", heading], 5)).not.toContain(
        orLeave(heading, "the fill weight or the water weight"),
      );
    }
    expect(asked("pour", [...BATCH, "Dye %"], 0.01)).not.toContain(orLeave("Dye %", "the load"));
    // A factor is a number.
    expect(asked("pour", [...BATCH, "Density"], "as before")).toEqual([]);
  });

  it("of vessels is asked about by what fills them", () => {
    const vessels = ["Vessel", "Wick"];
    expect(asked("vessels", [...vessels, "Wax weight (g)"], 200)).toContain(
      'The column "Wax weight (g)" is not read: vessels are filled by their water weight and wax factor. Write the factor, as POUR.WAXFACTOR works it out, or leave the column out',
    );
    expect(asked("vessels", [...vessels, "Load"], 0.06)).toContain(
      'The column "Load" is not read: a share has no place in this table that its heading says. Choose its column, or leave it out',
    );
  });

  it("of scents is asked about by limits, flash points and cure", () => {
    const scents = ["Scent", "Load"];
    expect(asked("scents", [...scents, "Wax maximum", "Product limit", "Cat 12 max"], 0.1)).toContain(
      'The column "Cat 12 max" is not read: a limit, and not known whose. Choose it as Wax maximum or Product limit under Columns, or leave it out',
    );
    expect(asked("scents", [...scents, "Wax flash point"])).toContain(orLeave("Wax flash point", "the flash point"));
    expect(asked("scents", [...scents, "Flash point (C)", "Wax flash point"])).not.toContain(
      orLeave("Wax flash point", "the flash point"),
    );
    expect(asked("scents", [...scents, "Cure (weeks)"])).toContain(
      'The column "Cure (weeks)" is not read: curing is read in whole days. Write it so, or leave it out',
    );
  });

  it("of moves is asked about by its direction", () => {
    const moves = ["Date", "Item", "Change"];
    const text =
      "is not read: a change counts by its sign, + what was received and - what was used. Check the signs, then leave the column out";
    for (const heading of ["In or out", "Direction", "Type", "Action", "Transaction"]) {
      expect(asked("moves", [...moves, heading])).toContain(`The column "${heading}" ${text}`);
    }
    expect(asked("moves", [...moves, "Item type"])).toEqual([]);
  });

  it("says which one is taken where two say the same, and of names only a numbered second scent", () => {
    const text = (name: string, taken: string, field: string) =>
      `The column "${name}" is not read: ${taken} is taken as ${field}. Choose the right one under Columns, or leave this one out`;
    expect(asked("pour", [...BATCH, "Load", "FO load"], 0.06)).toContain(text("FO load", "Load", "load"));
    expect(asked("pour", [...BATCH, "Scent 2"])).toContain(text("Scent 2", "Scent", "scent"));
    expect(asked("pour", [...BATCH, "Scent family"])).toEqual([]);
    expect(asked("pour", [...BATCH, "Scent 2nd choice"])).toEqual([]);
  });

  it("is left alone where its words are of money, checks, notes and the like", () => {
    for (const word of ["Cost", "Price", "Supplier", "Notes", "Photo", "Label", "Checked", "Due date"]) {
      expect(asked("pour", [...BATCH, `Load ${word.toLowerCase()}`], 0.06), word).toEqual([]);
    }
  });
});
