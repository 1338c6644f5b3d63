import { describe, expect, it } from "vitest";
import { type Calculated, calculate } from "../../src/engine/calculate";
import { SAMPLES } from "../../src/samples/index";
import { metadata, metadataText, script } from "../functions/built";

/**
 * The functions in an Excel that hands blank cells over as 0, as Microsoft's own issue list has it of builds without
 * the requirement set 1.5: within ranges, and where an argument must be there. What is left out comes as null.
 */
const asIn = (knowsBlanks: boolean): string => `
  const Office = { context: { requirements: { isSetSupported: () => ${knowsBlanks} } } };
  const needed = ${JSON.stringify(Object.fromEntries(metadata.functions.map(({ id, parameters }) => [id, parameters.map(({ optional }) => !optional)])))};
  const zeros = (given, isNeeded) =>
    Array.isArray(given) ? given.map((row) => row.map((cell) => cell ?? 0)) : isNeeded ? (given ?? 0) : given;
  const { associate } = CustomFunctions;
  CustomFunctions = {
    ...CustomFunctions,
    associate: (id, work) => associate(id, (...given) => work(...given.map((one, i) => zeros(one, needed[id][i])))),
  };
  ${script}`;

const isShown = (value: Calculated | undefined): boolean =>
  value !== null && value !== undefined && value !== "" && typeof value !== "object";

/** What formulas show there and should not: neither what is right, nor an error, nor nothing. */
async function silent(knowsBlanks: boolean, sheets: ReturnType<(typeof SAMPLES)[number]["sheets"]>): Promise<string[]> {
  const right = await calculate(sheets, { script, metadata: metadataText });
  const there = await calculate(sheets, { script: asIn(knowsBlanks), metadata: metadataText });
  return there.flatMap((rows, s) =>
    rows.flatMap((row, r) =>
      row.flatMap((value, c) => {
        const meant = right[s]?.[r]?.[c] ?? null;
        return isShown(value) && value !== meant ? [`${sheets[s]?.name} ${r + 1},${c + 1}: ${value} for ${meant}`] : [];
      }),
    ),
  );
}

describe.each(SAMPLES)("$file in an Excel that hands blank cells over as 0", ({ sheets }) => {
  it("shows no number and no text that is not right", async () => {
    expect(await silent(false, sheets())).toEqual([]);
  });
});

it("would show some, did the functions not know", async () => {
  const found = await Promise.all(SAMPLES.map(({ sheets }) => silent(true, sheets())));
  expect(found.flat().length).toBeGreaterThan(10);
});
