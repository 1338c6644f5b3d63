import { describe, expect, it } from "vitest";
import { buildRun } from "../../../src/runsheet/buildRun";
import { nameOf } from "../../../src/runsheet/plan/runPlan";
import { FIRST_SETTINGS, type Settings } from "../../../src/runsheet/settings";
import { matchColumns, type TableTypeId } from "../../../src/runsheet/tables/registry";
import type { Tables } from "../../../src/runsheet/tables/tableRows";
import type { CellValue } from "../../../src/sheet/sheet";

function run(
  tables: Partial<Record<TableTypeId, [headings: string[], ...rows: CellValue[][]]>>,
  more: Partial<Settings> = {},
) {
  const read = Object.entries(tables).map(([type, [headings, ...rows]]) => {
    return [type, { type, headings, rows, columns: matchColumns(type as TableTypeId, headings) }];
  });
  return buildRun(Object.fromEntries(read) as Tables, { ...FIRST_SETTINGS, loss: 0, ...more });
}

describe("what is poured without a name", () => {
  it("is scent where there is a load, and unscented where there is none", () => {
    const loaded = run({
      pour: [
        ["Vessel", "Quantity", "Fill weight", "Load"],
        ["Tin", 10, 106, 0.06],
        ["Tin", 10, 100, 0],
      ],
    });
    expect(loaded.plan.scents.map(nameOf)).toEqual(["Scent not named", "Unscented"]);
    expect(loaded.plan.scents.map(({ ingredients }) => ingredients.map(({ name }) => name))).toEqual([
      ["Wax", "Scent"],
      ["Wax"],
    ]);
    expect(nameOf({ scent: "Cedar", load: 0 })).toBe("Cedar");
  });
});

describe("the load of a row", () => {
  const headings = ["Vessel", "Quantity", "Fill weight", "Scent", "Load", "Basis"];
  const loads = (scents: CellValue[][], ...rows: CellValue[][]) => {
    const made = run(
      {
        pour: [headings, ...rows.map((row) => ["Tin", 1, 106, ...row])],
        scents: [["Scent", "Load", "Basis"], ...scents],
      },
      { load: 0.1, basis: "of total" },
    );
    return made.plan.scents.map(({ load, basis }) => `${load} ${basis}`);
  };

  it("is its own, else that of its scent, else the default; its basis too", () => {
    const cedar: CellValue[] = ["Cedar", 0.06, "of wax"];
    expect(loads([cedar], ["Cedar", 0.07, "of total"])).toEqual(["0.07 of total"]);
    expect(loads([cedar], ["Cedar", 0.07, null])).toEqual(["0.07 of wax"]);
    expect(loads([cedar], ["Cedar", null, null])).toEqual(["0.06 of wax"]);
    expect(loads([cedar], ["Fig", null, null])).toEqual(["0.1 of total"]);
    expect(loads([], ["Fig", 0.05, null])).toEqual(["0.05 of total"]);
  });

  it("is fixed once where it is wrong in the table of scents, unless the row has a fine one of its own", () => {
    const made = (own: CellValue) =>
      run({
        pour: [headings, ["Tin", 1, 106, "Cedar", own, "of wax"], ["Tin", 1, 106, "Cedar", own, "of wax"]],
        scents: [
          ["Scent", "Load"],
          ["Cedar", 6],
        ],
      }).problems.flatMap(({ table, field, severity, row }) =>
        field === "load" && severity === "error" ? [`${table} ${row}`] : [],
      );
    expect(made(null)).toEqual(["scents 0"]);
    // Copied from there, it is wrong in the same way.
    expect(made(6)).toEqual(["scents 0"]);
  });

  it("is none in a row that names no scent where others do, and that is said once for each", () => {
    const made = run({ pour: [headings, ["Tin", 1, 100, "", null, null], ["Bowl", 1, 106, "Cedar", 0.06, "of wax"]] });
    expect(made.plan.scents.map(({ scent, load }) => [scent, load])).toEqual([
      ["", 0],
      ["Cedar", 0.06],
    ]);
    expect(
      made.problems.filter(({ field, row }) => field === "scent" && row === 0).map(({ row, text }) => `${row} ${text}`),
    ).toEqual(["0 Tin names no scent and is poured without; a scent with a load of 0 % would say that it is meant so"]);
    const meant = run({ pour: [headings, ["Tin", 1, 100, "", 0, null], ["Bowl", 1, 106, "Cedar", 0.06, "of wax"]] });
    expect(meant.problems.filter(({ field, row }) => field === "scent" && row === 0)).toEqual([]);
  });
});

describe("rows that are poured", () => {
  const headings = ["Vessel", "Quantity", "Fill weight"];
  it("are those with a quantity; how many others name a vessel is known", () => {
    const made = run(
      { pour: [headings, ["Tin", 2, 100], ["Bowl", null, 100], ["Cup", 0, 100], [null, null, null]] },
      { load: 0 },
    );
    expect([made.plan.totals.candles, made.leftOut]).toEqual([2, 2]);
  });

  it("are told when they are hidden", () => {
    const pour = {
      type: "pour",
      headings,
      rows: [["Tin", 2, 100]],
      columns: matchColumns("pour", headings),
      hidden: [0],
    };
    const { problems } = buildRun({ pour } as object as Tables, { ...FIRST_SETTINGS, load: 0 });
    expect(problems).toMatchObject([
      {
        row: 0,
        field: "vessel",
        severity: "warning",
        text: "hidden, and poured all the same; show it, or clear its quantity",
      },
    ]);
  });
});

describe("what cannot be worked out", () => {
  const vessels: [string[], ...CellValue[][]] = [
    ["Vessel", "Water weight"],
    ["Tin", 125],
  ];
  const errors = (...rows: CellValue[][]) =>
    run({ pour: [["Vessel", "Quantity", "Fill weight"], ...rows], vessels }, { load: 0 }).problems.flatMap((one) =>
      one.severity === "error" ? [`${one.row} ${one.field}: ${one.text}`] : [],
    );

  it("is said once: of a vessel without a name not also that no table knows it", () => {
    expect(errors(["", 2, null])).toEqual(["0 vessel: Vessel: the cell is blank; give the vessel a name"]);
    expect(errors(["Bowl", 2, null])[0]).toMatch(/^0 vessel: Vessel: Bowl is not in the table of vessels/);
  });

  it("is a run without a quantity, which is asked for under its column", () => {
    expect(errors(["Tin", null, 100])).toEqual([
      "undefined quantity: Quantity: no row has one; write how many candles to pour",
    ]);
    // Where something else is to be fixed first it is not said too.
    expect(errors(["Tin", "two", 100])).toHaveLength(1);
  });

  it("is no price where one is written and cannot be read, and that is said where it stands", () => {
    const made = run(
      {
        pour: [
          ["Vessel", "Quantity", "Fill weight"],
          ["Tin", 2, 100],
        ],
        items: [
          ["Item", "On hand", "Unit price (per g)"],
          ["Wax", 500, "cheap"],
          ["Tin", 5, 1],
        ],
      },
      { load: 0 },
    );
    expect(made.costs).toBeUndefined();
    expect(made.problems.map(({ text }) => text)).toEqual([
      'Unit price: "cheap" is not a number; write a plain number',
    ]);
  });
});

describe("what is fetched", () => {
  it("stands in the order of the work: waxes, dye, scent, all else that is weighed, vessels, wicks, components", () => {
    const made = run({
      pour: [
        ["Vessel", "Quantity", "Fill weight", "Scent"],
        ["Tin", 3, 109, "Cedar"],
      ],
      recipes: [
        ["Scent", "Ingredient", "Share", "Basis", "Kind"],
        ["Cedar", "Hardener", 0.02, "of wax", "other"],
        ["Cedar", "Cedar oil", 0.06, "of wax", "scent"],
        ["Cedar", "Green dye", 0.01, "of wax", "dye"],
        ["Cedar", "Spare oil", 0, "of wax", "scent"],
        ["Cedar", "Soft wax", 1, "part", "wax"],
      ],
      vessels: [
        ["Vessel", "Water weight", "Wick"],
        ["Tin", 125, "2 x W-21"],
      ],
      components: [
        ["Vessel", "Item", "Each"],
        ["Tin", "Lid", 1],
        ["Tin", "Box for two", 0.5],
        ["Tin", "Ribbon", null],
      ],
    });
    expect(made.things.map(({ kind, name, amount }) => `${kind}: ${name} ${amount ?? "?"}`)).toEqual([
      ...["wax: Soft wax 300", "dye: Green dye 3", "scent: Cedar oil 18", "other: Hardener 6", "vessel: Tin 3"],
      // Half a box is a box, and of the ribbon nobody wrote how much.
      ...["wick: W-21 6", "component: Lid 3", "component: Box for two 2", "component: Ribbon ?"],
    ]);
  });
});
