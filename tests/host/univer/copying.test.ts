import papa from "papaparse";
import { expect, it } from "vitest";
import { quoted } from "../../../src/host/univer/editing/copying";

it("puts texts of several lines in quotes, so that another program reads as many rows as there were", () => {
  const rows = [
    ["Tin", 'pour "slow"\nthen wait', "3"],
    ["Jar", "a\nb", "a\nb"],
  ];
  const plain = rows.map((cells) => cells.join("\t")).join("\n");
  const texts = rows.flat().filter((text) => text.includes("\n"));
  expect(papa.parse(plain, { delimiter: "\t" }).data).not.toEqual(rows);
  expect(papa.parse(quoted(plain, texts), { delimiter: "\t" }).data).toEqual(rows);
});

it("writes a break that was typed as one that every program reads", () => {
  expect(quoted("Tin\tone\rtwo\nJar\t3", ["one\rtwo"])).toBe('Tin\t"one\ntwo"\nJar\t3');
});

it("leaves all else as it is", () => {
  expect(quoted("a\tb\nc\td", [])).toBe("a\tb\nc\td");
});
