import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CellError, call, cell, down, messageOf, metadata, type Value } from "./built";
import { faultIn, grid, WRONG_CELLS } from "./generated";

/** Broadcasting as Excel's own operators do it, written the long way round. */
function plainBroadcast(
  a: Value[][],
  b: Value[][],
  work: (x: Value, y: Value) => Value | undefined,
): (Value | undefined)[][] {
  const rows = Math.max(a.length, b.length);
  const columns = Math.max((a[0] as Value[]).length, (b[0] as Value[]).length);
  const result: (Value | undefined)[][] = [];
  for (let r = 0; r < rows; r++) {
    const line: (Value | undefined)[] = [];
    for (let c = 0; c < columns; c++) {
      const pick = (grid: Value[][]): Value | undefined => {
        const row = grid.length === 1 ? 0 : r;
        const column = (grid[0] as Value[]).length === 1 ? 0 : c;
        return row < grid.length ? grid[row]?.[column] : undefined;
      };
      const [x, y] = [pick(a), pick(b)];
      if (x === null || x === "") line.push("");
      else if (x === undefined || y === undefined) line.push(undefined);
      else line.push(work(x, y));
    }
    result.push(line);
  }
  return result;
}

describe("filling down and spilling", () => {
  it("broadcasts as Excel's operators do", () => {
    const water = fc.oneof(fc.double({ min: 0, max: 1e6, noNaN: true }), fc.constantFrom<Value>(null, ""));
    const factor = fc.double({ min: 0.1, max: 2, noNaN: true });
    fc.assert(
      fc.property(grid(water), grid(factor), (a, b) => {
        const expected = plainBroadcast(a, b, (x, y) => (x as number) * (y as number));
        const actual = call("FILLWEIGHT", a, b);
        expect(actual.length).toBe(expected.length);
        for (const [r, row] of expected.entries()) {
          expect(actual[r]?.length).toBe(row.length);
          for (const [c, value] of row.entries()) {
            const got = actual[r]?.[c] as Value;
            if (value === undefined) messageOf(got, "#N/A");
            else expect(got).toBe(value);
          }
        }
      }),
      { numRuns: 500 },
    );
  });

  it("marks the cells beyond a shorter range", () => {
    const rows = call("FILLWEIGHT", down(100, 200, 300), down(0.8, 0.9));
    expect(rows.slice(0, 2)).toEqual([[80], [180]]);
    expect(messageOf(rows[2]?.[0], "#N/A")).toContain("waxFactor");
  });

  it("takes a column beside a row", () => {
    expect(call("FILLWEIGHT", down(100, 200), [[0.5, 1, 2]])).toEqual([
      [50, 100, 200],
      [100, 200, 400],
    ]);
  });

  it("keeps two columns for each fill", () => {
    expect(call("SCENTSPLIT", down(212, null, 106), 0.06)).toEqual([
      [200, 12],
      ["", ""],
      [100, 6],
    ]);
  });
});

describe("blanks", () => {
  it("keeps blank rows blank and takes 0 as a value", () => {
    expect(call("FILLWEIGHT", down(0, null, "", 100))).toEqual([[0], [""], [""], [86]]);
  });
  it("takes the default for a blank optional argument, cell by cell", () => {
    expect(call("FILLWEIGHT", down(100, 100), down(null, 0.9))).toEqual([[86], [90]]);
  });
  it("names a blank argument that has no default", () => {
    expect(messageOf(cell("WAXPART", 100, null))).toBe("load: the cell is blank; fill it in");
  });
  it("looks at the first filled-down argument, not the shape", () => {
    expect(call("VESSELVOLUME", "round", down(null, 10), 10, "cm")[0]).toEqual([""]);
  });
});

describe("errors", () => {
  it("of one cell given for all stand in each filled row, and blank rows stay blank", () => {
    const rows = call("FILLWEIGHT", down(100, null, 100), "x");
    expect(rows[1]).toEqual([""]);
    for (const row of [0, 2]) expect(messageOf(rows[row]?.[0])).toBe('waxFactor: "x" is text; write a plain number');
  });

  it("stand in their own cell", () => {
    const rows = call("WAXPART", down(106, 106, 106), down(0.06, 6, 0.06));
    expect(rows[0]).toEqual([100]);
    expect(messageOf(rows[1]?.[0])).toBe("load: 6 means 600 %; write 6% or 0.06");
    expect(rows[2]).toEqual([100]);
  });

  it("come out as the kind that came in, however the host passes them", () => {
    for (const code of ["#N/A", "#DIV/0!", "#REF!", "#NUM!", "#NAME?", "#NULL!", "#VALUE!"]) {
      for (const error of [new CellError(code), { type: "Error", basicValue: code, basicType: "Error" }, code]) {
        const rows = call("FILLWEIGHT", down(100, error));
        expect(rows[0]).toEqual([86]);
        expect(rows[1]?.[0]).toMatchObject({ code });
      }
    }
  });

  it("say what a text or a truth value is doing there", () => {
    expect(messageOf(cell("FILLWEIGHT", "8.8 oz"))).toBe('water: "8.8 oz" is text; write a plain number');
    expect(messageOf(cell("FILLWEIGHT", " "))).toBe("water: the cell holds only spaces; clear it or write a number");
    expect(messageOf(cell("FILLWEIGHT", true))).toBe("water: TRUE is not a number; write a plain number");
    expect(messageOf(cell("FILLWEIGHT", -1))).toBe("water: -1 is below 0; write 0 or more");
  });

  it("say so when an answer is too large to write", () => {
    expect(messageOf(cell("FILLWEIGHT", 1.7e308, 2))).toContain("too large");
  });

  it("passes on other kinds of error as what they show", () => {
    expect(messageOf(cell("FILLWEIGHT", { type: "Error", basicValue: "#SPILL!" }))).toContain("the cell shows #SPILL!");
  });

  it("refuses numbers beyond what a spreadsheet keeps", () => {
    expect(messageOf(cell("FILLWEIGHT", 1e16))).toBe("water: 10000000000000000 is too large; check its digits");
  });

  it("reads rich values by their basic value", () => {
    expect(cell("FILLWEIGHT", { type: "FormattedNumber", basicValue: 100, numberFormat: "0 g" })).toBe(86);
  });
});

describe("every function, with every kind of wrong cell", () => {
  const anyCell = fc.constantFrom(...WRONG_CELLS);
  const anyArgument = fc.oneof(anyCell, grid(anyCell), fc.constant(undefined));

  it.each(metadata.functions.map(({ id, parameters }) => [id, parameters.length] as const))(
    "%s gives values and errors, never NaN and never an exception",
    (id, count) => {
      fc.assert(
        fc.property(fc.array(anyArgument, { minLength: count, maxLength: count }), (args) => {
          expect(faultIn(call(id, ...args))).toBeUndefined();
        }),
        { numRuns: 300 },
      );
    },
  );
});
