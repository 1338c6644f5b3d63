import { describe, expect, it } from "vitest";
import { type Bundle, loadBundle } from "../../src/engine/bundle";
import { calculate } from "../../src/engine/calculate";
import { descriptions } from "../../src/engine/functions";
import type { Cell } from "../../src/sheet/sheet";
import { metadataText, script } from "../functions/built";

/** A function that tells what it was called with: SEEN(range, value, [left]). */
const teller: Bundle = {
  script: `CustomFunctions.associate("SEEN", (...args) => {
    const told = (cell) => cell instanceof CustomFunctions.Error ? { error: cell.code } : cell;
    const all = args.map((arg) => Array.isArray(arg) ? arg.map((row) => row.map(told)) : told(arg));
    return [[JSON.stringify(all)]];
  });
  CustomFunctions.associate("GIVE", (what) => ({
    spill: [[1, "two"], [true, new CustomFunctions.Error(CustomFunctions.ErrorCode.notAvailable, "none fits")]],
    nothing: null, infinite: [[Infinity, NaN]], error: new CustomFunctions.Error("#VALUE!", "fix it"), plain: 3,
  })[what]);
  CustomFunctions.associate("THROW", () => { throw new TypeError("broken inside"); });`,
  metadata: JSON.stringify({
    functions: [
      {
        id: "SEEN",
        name: "SEEN",
        parameters: [
          { name: "range", dimensionality: "matrix", type: "any" },
          { name: "value", type: "any" },
          { name: "left", dimensionality: "matrix", optional: true, type: "any" },
        ],
      },
      { id: "GIVE", name: "GIVE", parameters: [{ name: "what", type: "any" }] },
      { id: "THROW", name: "THROW", parameters: [] },
    ],
  }),
};

/** The values that a formula makes of a sheet with these cells, from the formula's own cell on. */
async function results(formula: string, cells: Cell[] = [], bundle = teller) {
  const [sheet] = await calculate(
    [{ name: "Sheet", widths: [], cells: [...cells, { row: 9, column: 9, content: { formula } }] }],
    bundle,
  );
  return (sheet ?? []).slice(9).map((row) => row.slice(9));
}

/** What SEEN was called with, the invocation left out. */
async function seen(call: string, cells: Cell[] = []): Promise<unknown[]> {
  const [[told]] = (await results(`=POUR.SEEN(${call})`, cells)) as [[string]];
  return JSON.parse(told).slice(0, 3);
}

const number = (row: number, column: number, value: number, format?: string): Cell => ({
  row,
  column,
  content: { number: value },
  ...(format && { format }),
});
const text = (row: number, column: number, value: string): Cell => ({ row, column, content: { text: value } });

// What Excel passes is read in the documents of the platform; what it passes for one cell is inferred there.
describe("a function in the embedded spreadsheet is called as Excel calls it", () => {
  it("with rows of cells for a range and the plain value for a single one", async () => {
    expect(await seen("A1:B2, A1", [number(0, 0, 1), number(0, 1, 2), number(1, 0, 3), number(1, 1, 4)])).toEqual([
      [
        [1, 2],
        [3, 4],
      ],
      1,
      null,
    ]);
    expect(await seen("A1, 5", [number(0, 0, 1)])).toEqual([[[1]], 5, null]);
    expect(await seen('7, "x"')).toEqual([[[7]], "x", null]);
  });

  it("with null for blank cells and for what is left out, and a zero as a zero", async () => {
    expect(await seen("A1:A3, A2", [number(0, 0, 0), number(2, 0, 0)])).toEqual([[[0], [null], [0]], null, null]);
    expect(await seen("A1,,")).toEqual([[[null]], null, null]);
    expect(await seen(",1,2")).toEqual([null, 1, [[2]]]);
  });

  it("with true types: text stays text, a percentage and a date are their numbers", async () => {
    const cells = [text(0, 0, "12"), number(0, 1, 0.06, "0%"), number(0, 2, 46351, "yyyy-mm-dd"), text(0, 3, "=1+1")];
    expect(await seen("A1:E1, TRUE", [...cells, { row: 0, column: 4, content: { formula: "=1>2" } }])).toEqual([
      [["12", 0.06, 46351, "=1+1", false]],
      true,
      null,
    ]);
  });

  it("with an error object for a cell with an error", async () => {
    const cells: Cell[] = [{ row: 0, column: 0, content: { formula: "=1/0" } }];
    expect(await seen("A1:B1, NA()", cells)).toEqual([[[{ error: "#DIV/0!" }, null]], { error: "#N/A" }, null]);
  });

  it("with its name in an object behind the arguments", async () => {
    const [[told]] = (await results("=POUR.SEEN(1,2)")) as [[string]];
    expect(JSON.parse(told)).toEqual([[[1]], 2, null, { functionName: "SEEN" }]);
  });
});

describe("what a function gives back", () => {
  it("spills with its types, each error in its own cell and with its message", async () => {
    expect(await results('=POUR.GIVE("spill")')).toEqual([
      [1, "two"],
      [true, { error: "#N/A", message: "none fits" }],
    ]);
    expect(await results('=POUR.GIVE("plain")+1')).toEqual([[4]]);
    expect(await results('=POUR.GIVE("nothing")')).toEqual([[0]]);
  });

  it("keeps an error's message through functions of the spreadsheet", async () => {
    expect(await results('=ROUND(POUR.GIVE("error"),2)')).toEqual([[{ error: "#VALUE!", message: "fix it" }]]);
  });

  it("is an error, never an exception, a NaN or an infinity", async () => {
    expect(await results("=POUR.THROW()")).toEqual([[{ error: "#VALUE!", message: "broken inside" }]]);
    const [row] = await results('=POUR.GIVE("infinite")');
    expect(row?.map((cell) => (cell as { error: string }).error)).toEqual(["#NUM!", "#NUM!"]);
    const tooMany = (await results('=POUR.GIVE("plain",2)'))[0]?.[0] as { message: string };
    expect(tooMany.message).toContain("at most 1");
  });

  it("cannot spill over what stands there", async () => {
    const blocked = (await results('=POUR.GIVE("spill")', [text(10, 9, "here")]))[0]?.[0] as { error: string };
    expect(blocked.error).toBe("#SPILL!");
  });
});

describe("the built functions in the embedded spreadsheet", () => {
  const built = { script, metadata: metadataText };

  it("are computed whatever the capitals", async () => {
    // 318 at 6 % of wax, worked by hand: 300 x 1.06 = 318.
    expect(await results("=pour.ScentSplit(318, 6%)", [], built)).toEqual([[300, 18]]);
  });

  it("say what to fix", async () => {
    expect(await results("=POUR.SCENTPART(318, 6)", [], built)).toEqual([
      [{ error: "#VALUE!", message: "load: 6 means 600 %; write 6% or 0.06" }],
    ]);
  });

  it("show their descriptions while they are typed, each argument with whether it may be left out", () => {
    const functions = loadBundle(built);
    const infos = descriptions(functions);
    expect(infos.map(({ functionName }) => functionName)).toEqual(functions.map(({ name }) => `POUR.${name}`));
    for (const info of infos) {
      expect(info.abstract, info.functionName).toMatch(/\w/);
      for (const { name, detail } of info.functionParameter)
        expect(detail, `${info.functionName} ${name}`).toMatch(/\w/);
    }
    const fill = infos.find(({ functionName }) => functionName === "POUR.FILLWEIGHT");
    expect(fill?.functionParameter.map(({ name, require }) => [name, require])).toEqual([
      ["water", 1],
      ["waxFactor", 0],
    ]);
  });

  it("must all be registered by the script", () => {
    expect(() => loadBundle({ ...teller, script: "" })).toThrow("SEEN");
  });
});
