import { expect, it } from "vitest";
import { calculate } from "../../src/engine/calculate";
import type { Cell } from "../../src/sheet/sheet";

const NO_FUNCTIONS = { script: "", metadata: '{"functions":[]}' };

/** What each of these formulas makes, by itself. */
async function results(...formulas: string[]) {
  const cells = formulas.map((formula, i): Cell => ({ row: i * 2, column: 0, content: { formula } }));
  const [sheet] = await calculate([{ name: "Costs", widths: [], cells }], NO_FUNCTIONS);
  return formulas.map((_, i) => sheet?.[i * 2]?.[0]);
}

// By hand throughout; what Excel takes into an array in braces: Microsoft's "Guidelines and examples of array formulas",
// "Using constants in array formulas" (from memory).
it("numbers in a formula are numbers however they are written", async () => {
  const same = ["=1.0=1", "=0.50=0.5", "=1e3=1000", "=.5=0.5", "=1E+3=1000", "=5.=5", "=007=7"];
  expect(await results(...same)).toEqual(same.map(() => true));
  expect(await results("=1.0", "=.5", "=-.50", "=1E3", '=1.50&" g"', '="1.0"', '="1.0"=1', "=50.0%")).toEqual([
    ...[1, 0.5, -0.5, 1000],
    ...["1.5 g", "1.0", false, 0.5],
  ]);
  expect(await results("=1e999")).toEqual([{ error: "#NUM!", message: "" }]);
});

it("numbers in an array in braces too", async () => {
  const sums = {
    "=SUM({4.0,5.50,6})": 15.5,
    "=SUM({4.0;5})": 9,
    "=SUM({+5,1})": 6,
    "=SUM({.5,1})": 1.5,
    "=SUM({ 1e3 , -2.50 ; 1E+2 , 0 })": 1097.5,
    "=SUM({50%,1})": 1.5,
    "=SUM({1,2}*{3.0,4})": 11,
    "=SUMPRODUCT({0.50,1},{2,.5})": 1.5,
    "=MATCH(2,{1.0,2.0,3.0},0)": 2,
    '=VLOOKUP("b",{"a",1.0;"b",2.50},2,FALSE)': 2.5,
  };
  expect(await results(...Object.keys(sums))).toEqual(Object.values(sums));
});

it("texts in an array in braces stay whole, and texts", async () => {
  const made = {
    '=COUNTA({"a, b","c"})': 2,
    '=COUNTA({"a;b","c"})': 2,
    '=TEXTJOIN("|",TRUE,{"a;b","c,d";"e","{f}"})': "a;b|c,d|e|{f}",
    '=INDEX({"5""",1},1,1)': '5"',
    '=INDEX({"","x"},1,1)&"y"': "y",
    '=INDEX({"50%","1-2"},1,1)': "50%",
    '=INDEX({"50%","1-2"},1,2)': "1-2",
    '=SUM({"1.0",2})': 2,
    "=COUNTA({true,FALSE})": 2,
    "=IF(INDEX({TRUE,1},1,1),7)": 7,
    "=IFERROR(INDEX({#N/A,1},1,1),5)": 5,
  };
  expect(await results(...Object.keys(made))).toEqual(Object.values(made));
});

it("what is no array of constants is an error, and all else is worked out", async () => {
  const wrong = ["=SUM({A1,2})", "=SUM({5/2,1})", "=SUM({1,2;3})", "=SUM({1,})", "=SUM({})"];
  const error = { error: "#VALUE!", message: "" };
  expect(await results(...wrong, "=1+1")).toEqual([...wrong.map(() => error), 2]);
});
