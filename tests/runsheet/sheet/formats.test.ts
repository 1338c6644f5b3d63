import { expect, it } from "vitest";
import { calculate } from "../../../src/engine/calculate";
import { decimalsFormat, inRoom, openEnded } from "../../../src/runsheet/sheet/formats";
import { metadataText, script } from "../../functions/built";

/** Numbers as a spreadsheet engine shows them in a format. */
async function shown(format: string, numbers: readonly number[]): Promise<unknown[]> {
  const text = `"${format.replaceAll('"', '""')}"`;
  const cells = numbers.map((number, row) => ({ row, column: 0, content: { formula: `=TEXT(${number},${text})` } }));
  const [values = []] = await calculate([{ name: "Shown", widths: [], cells }], { script, metadata: metadataText });
  return values.map(([value]) => value);
}

it.each([
  [0.1, "g", [7.5, 7728.5, 9999.9, 10_000, 12_345.6], ["7.5 g", "7728.5 g", "9999.9 g", "10000 g", "12346 g"]],
  [0.01, "oz", [9.5, 99.99, 248.8, 1234.56], ["9.50 oz", "99.99 oz", "248.8 oz", "1235 oz"]],
  [0.001, "kg", [7.728, 12.345, 123.456], ["7.728 kg", "12.35 kg", "123.5 kg"]],
  [1, "g", [7728, 12_345], ["7728 g", "12345 g"]],
])("a weight to %d %s shows as many decimals as its column has room for", async (division, unit, numbers, texts) => {
  const format = inRoom(decimalsFormat(division), unit);
  const found = await shown(format, numbers);
  expect(found).toEqual(texts);
  expect(Math.max(...found.map((text) => String(text).length))).toBeLessThanOrEqual(8);
  const [finer] = await shown(inRoom(openEnded(decimalsFormat(division)), unit), [1.23]);
  expect(finer).toMatch(new RegExp(`^1\\.23${division < 0.01 ? "0" : ""} ${unit}$`));
});
