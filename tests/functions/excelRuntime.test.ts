import { describe, expect, it } from "vitest";
import { type Call, FunctionsRuntime } from "../host/excel/client/functionsRuntime";
import { PLATFORMS, type Platform } from "../host/excel/client/officeJs";
import { everything, knowing, REQUIRED } from "../host/excel/client/requirementSets";
import { metadata, script } from "./built";

// The built functions in Microsoft's own runtime for them. Their values are worked out by hand: 0.86 of the water.

/** Excel as it loads the add-in at its oldest, and as it is today: they send answers in different forms. */
const VERSIONS = [knowing(REQUIRED), everything];

describe.each(Object.keys(PLATFORMS) as Platform[])("in Excel, %s,", (platform) => {
  const runtime = new FunctionsRuntime(platform, script, everything);

  it("office.js asks for the client that the tests use", () => {
    expect(runtime.asked).toContain(`https://localhost:3000/office/${PLATFORMS[platform]}.debug.js`);
  });

  it("all functions are known by their ids", () => {
    const { _association } = runtime.office.CustomFunctions as { _association: { mappings: object } };
    expect(Object.keys(_association.mappings).sort()).toEqual(metadata.functions.map(({ id }) => id).sort());
    expect(metadata.functions.length).toBeGreaterThan(30);
  });

  it("a function that is not known is none", async () => {
    expect((await runtime.call("NOSUCH", [[1]])).isFailed).toBe(true);
  });
});

const error = (code: string, message?: string): object =>
  expect.objectContaining({ valueType: "CustomFunctionError", code, ...(message && { message }) });

describe.each(VERSIONS.map((knows) => new FunctionsRuntime("web", script, knows)))("a function", (runtime) => {
  it("gives each cell its own error with its message, and the others their value", async () => {
    const { value, isFailed } = await runtime.call("FILLWEIGHT", [[240], ["abc"], [null], [300]], [[0.86]]);
    const message = 'water: "abc" is text; write a plain number';
    expect(value).toEqual([[206.4], [error("#VALUE!", message)], [""], [258]]);
    expect(isFailed).toBe(false);
  });

  it("hands on the error of a cell that it is given, and works the others out", async () => {
    const wrong = { type: "CustomFunctionError", code: "#DIV/0!" };
    const { value } = await runtime.call("FILLWEIGHT", [[240], [wrong]], [[0.86]]);
    expect(value).toEqual([[206.4], [error("#DIV/0!")]]);
  });

  it("takes rich values for what they show, errors too", async () => {
    const rich = (value: object) => ({ value: JSON.stringify(value) });
    const number = rich({ type: "FormattedNumber", basicType: "Double", basicValue: 250, numberFormat: "0.0" });
    const wrong = rich({ type: "Error", basicType: "Error", basicValue: "#DIV/0!", errorType: "Div0" });
    const [answer] = await runtime.callAll([["FILLWEIGHT", [[240], [number], [wrong]], [[0.86]]]], true);
    expect(answer?.value).toEqual([[206.4], [215], [error("#DIV/0!")]]);
  });

  it("takes a single value for a range of one", async () => {
    expect(await runtime.call("FILLWEIGHT", 240, 0.86)).toEqual({ value: [[206.4]], isFailed: false });
  });

  it("takes what is left out as left out: the wax factor is the usual one", async () => {
    const [left, given] = await runtime.callAll([
      ["FILLWEIGHT", [[240]], null],
      ["FILLWEIGHT", [[240]], [[0.86]]],
    ]);
    expect(left).toEqual(given);
  });

  it("stays blank or says what is missing when nothing is given, every one of them", async () => {
    const calls = metadata.functions.map(({ id, parameters }): Call => [id, ...parameters.map(() => null)]);
    const answers = await runtime.callAll(calls);
    const told = expect.objectContaining({ message: expect.stringMatching(/\w{3}/) });
    for (const [i, { value, isFailed }] of answers.entries()) {
      expect(isFailed).toBe(false);
      for (const cell of (value as unknown[][]).flat()) expect(["", told], calls[i]?.[0]).toContainEqual(cell);
    }
  });

  it("answers ten thousand calls, each its own, in requests that Excel takes", async () => {
    const before = runtime.sent.length;
    const calls = Array.from({ length: 10_000 }, (_, i): Call => ["FILLWEIGHT", [[1 + i]], [[0.5]]]);
    const answers = await runtime.callAll(calls);
    expect(answers.map(({ value }) => value)).toEqual(calls.map((_, i) => [[(1 + i) / 2]]));
    const bytes = runtime.sent.slice(before);
    expect(bytes.length).toBeLessThan(100);
    expect(Math.max(...bytes)).toBeLessThan(5 * 1024 * 1024);
  });

  it("works a range of ten thousand out in one call", async () => {
    const { value } = await runtime.call(
      "FILLWEIGHT",
      Array.from({ length: 10_000 }, (_, i) => [1 + i]),
      [[0.5]],
    );
    expect(value).toEqual(Array.from({ length: 10_000 }, (_, i) => [(1 + i) / 2]));
  });
});
