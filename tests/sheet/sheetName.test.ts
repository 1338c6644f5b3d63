import fc from "fast-check";
import { expect, it } from "vitest";
import { sheetName } from "../../src/sheet/sheetName";
import { anyCharacter } from "../anyCharacter";

it("keeps a name that is free", () => {
  expect(sheetName("Pour 2026-330-01", ["Vessels"])).toBe("Pour 2026-330-01");
});

it("numbers a name that is taken, also in other capitals", () => {
  expect(sheetName("Pour", ["pour"])).toBe("Pour (2)");
  expect(sheetName("Pour", ["POUR", "pour (2)", "Pour (3)"])).toBe("Pour (4)");
});

it("keeps 31 characters, the number among them", () => {
  const long = "A run sheet with a very long name indeed";
  expect(sheetName(long, [])).toBe("A run sheet with a very long na");
  expect(sheetName(long, ["A run sheet with a very long na"])).toBe("A run sheet with a very lon (2)");
});

it("cuts no character in half", () => {
  expect(sheetName(`${"x".repeat(30)}🕯`, [])).toBe("x".repeat(30));
});

it("takes out what no sheet name may hold", () => {
  expect(sheetName("a:b\\c/d?e*f[g]h", [])).toBe("a b c d e f g h");
  expect(sheetName("'tis a jar'", [])).toBe("tis a jar");
  expect(sheetName("???", [])).toBe("Sheet");
  expect(sheetName("history", [])).toBe("history (2)");
});

it("gives a name that Excel takes, whatever is wished and taken", () => {
  // Excel's rules for sheet names: its help on renaming a worksheet.
  const wish = fc.oneof(
    fc.string({ unit: "grapheme" }),
    fc.string({ unit: anyCharacter }),
    fc.constant("x'".repeat(20)),
  );
  fc.assert(
    fc.property(wish, fc.array(wish), (name, others) => {
      const taken = [...others, name, sheetName(name, [])];
      const found = sheetName(name, taken);
      expect(found).toMatch(/^(?!')[^:\\/?*[\]]{1,31}(?<!')$/);
      expect(taken.map((one) => one.toLowerCase())).not.toContain(found.toLowerCase());
    }),
  );
});
