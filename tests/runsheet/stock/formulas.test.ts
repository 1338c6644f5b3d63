import { describe, expect, it } from "vitest";
import { calculate } from "../../../src/engine/calculate";
import { lotPrice, stockValue } from "../../../src/runsheet/stock/lotPrice";
import { leftOf, lotsOf, oldestLots } from "../../../src/runsheet/stock/lots";
import type { Cell, CellValue } from "../../../src/sheet/sheet";
import { metadataText, script } from "../../functions/built";
import { DAY, ledgerFrom } from "./moved";

/** The ledger beside plain spreadsheet formulas that a general spreadsheet engine works out: SUMIFS, MIN, SUMPRODUCT. */
const LOTS = 5;
const ROWS: CellValue[][] = [
  ...Array.from({ length: LOTS }, (_, i) => [DAY + 10 * i, "Wax", `L${i}`, 900 + 130.5 * i, 7 + 1.3 * i]),
  // 120 uses of up to 15 g each, the first 60 of the oldest lot.
  ...Array.from({ length: 120 }, (_, i) => {
    const lot = i < 60 ? 0 : i % LOTS;
    return [DAY + 60 + i, "wax", `l${lot}`, -((i * 37) % 150) / 10 - 0.1, null];
  }),
  [DAY + 200, "Wax", "L1", 12.3, null],
];
const NEED = 1500.7;

/** The sheet: moves in columns A to E, and from G on a row for each lot. */
function cells(): Cell[] {
  const end = ROWS.length;
  const lot = (column: string, i: number) => `${column}${i + 1}`;
  const found: Cell[] = ROWS.flatMap((row, r) =>
    row.flatMap((value, column): Cell[] => {
      if (value === null) return [];
      return [{ row: r, column, content: typeof value === "number" ? { number: value } : { text: String(value) } }];
    }),
  );
  for (let i = 0; i < LOTS; i++) {
    const which = `$B$1:$B$${end},"Wax",$C$1:$C$${end},${lot("$G", i)}`;
    const before = i === 0 ? "0" : `SUM($H$1:$H$${i})`;
    const formulas = [
      `=SUMIFS($D$1:$D$${end},${which})`,
      `=SUMIFS($E$1:$E$${end},${which})/SUMIFS($D$1:$D$${end},${which},$E$1:$E$${end},">0")`,
      `=MAX(0,MIN(${lot("$H", i)},${NEED}-${before}))`,
    ];
    found.push({ row: i, column: 6, content: { text: `L${i}` } });
    for (const [f, formula] of formulas.entries()) found.push({ row: i, column: 7 + f, content: { formula } });
  }
  const all = (column: string) => `$${column}$1:$${column}$${LOTS}`;
  const sums = [
    `=SUM(${all("H")})`,
    `=SUMPRODUCT(${all("H")},${all("I")})`,
    `=SUMPRODUCT(${all("J")},${all("I")})/SUM(${all("J")})`,
    `=SUMPRODUCT(${all("H")},${all("I")})/SUM(${all("H")})`,
  ];
  return [...found, ...sums.map((formula, i): Cell => ({ row: LOTS + i, column: 7, content: { formula } }))];
}

describe("the ledger and plain formulas", () => {
  it("agree on what each lot has left, what it cost, which lots come next and what the stock is worth", async () => {
    const [sheet = []] = await calculate([{ name: "Moves", widths: [], cells: cells() }], {
      ...{ script, metadata: metadataText },
    });
    const at = (row: number, column: number) => sheet[row]?.[column] as number;
    const ledger = ledgerFrom(ROWS);
    const left = new Map(lotsOf(ledger, "Wax", "weight").map((one) => [one.lot, one]));
    const { taken } = oldestLots(ledger, "Wax", NEED, "weight", DAY);
    for (let i = 0; i < LOTS; i++) {
      expect(left.get(`L${i}`)?.quantity ?? 0).toBeCloseTo(at(i, 7), 9);
      if (left.has(`L${i}`)) expect(left.get(`L${i}`)?.unitPrice).toBeCloseTo(at(i, 8), 12);
      expect(taken.find(({ lot }) => lot === `L${i}`)?.quantity ?? 0).toBeCloseTo(at(i, 9), 9);
    }
    expect(taken.length).toBeGreaterThan(1);
    expect(leftOf(ledger, "Wax", "weight")).toBeCloseTo(at(LOTS, 7), 9);
    expect(stockValue(ledger, "first in").total).toBeCloseTo(at(LOTS + 1, 7), 9);
    expect(lotPrice(ledger, "Wax", "weight", "first in", NEED)?.price).toBeCloseTo(at(LOTS + 2, 7), 12);
    expect(lotPrice(ledger, "Wax", "weight", "average", NEED)?.price).toBeCloseTo(at(LOTS + 3, 7), 12);
  });
});
