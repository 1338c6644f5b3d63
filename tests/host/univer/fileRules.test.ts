import { strFromU8, unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import type { BookSheet, Condition } from "../../../src/file/book";
import { openFile } from "../../../src/file/openFile";
import { saveBook } from "../../../src/file/saveBook";
import type { ConditionJson } from "../../../src/host/univer/file/conditionJson";
import { conditionsJson, conditionsOf } from "../../../src/host/univer/file/conditionResource";
import { styleData, styleOf } from "../../../src/host/univer/file/styleData";
import { type ValidationJson, validationOf } from "../../../src/host/univer/file/validationResource";
import { everythingBook } from "./everythingBook";

/** What rules and looks made in the page become in a file, where the sheet's plugins and files say them differently. */

const EXTENT = { rows: 100, columns: 26 };
const ranges = [{ startRow: 1, endRow: 3, startColumn: 1, endColumn: 1 }];

const saidIn = (rule: object): Condition => {
  const json = [{ cfId: "new", ranges, stopIfTrue: false, rule }] as ConditionJson[];
  return conditionsOf(json, EXTENT).get("new") as Condition;
};

/** What a file has of the first sheet with these rules, and what it could not keep. */
function throughFile(rules: Partial<Pick<BookSheet, "conditions" | "validations">>) {
  const book = everythingBook();
  const sheets = [{ ...(book.sheets[0] as BookSheet), conditions: [], validations: [], ...rules }];
  const { bytes, lost } = saveBook(null, { ...book, sheets });
  const sheet = strFromU8(unzipSync(bytes)["xl/worksheets/sheet1.xml"] ?? new Uint8Array());
  return { lost, sheet, read: openFile(bytes, "rules.xlsx").book.sheets[0] as BookSheet };
}

describe("conditions made in the page", () => {
  // The formulas are as Excel writes them, from memory.
  it.each([
    [{ subType: "text", operator: "containsText", value: 'a "b"' }, '=NOT(ISERROR(SEARCH("a ""b""",B2)))'],
    [{ subType: "text", operator: "beginsWith", value: "Fig" }, '=LEFT(B2,LEN("Fig"))="Fig"'],
    [{ subType: "text", operator: "containsBlanks", value: "" }, "=LEN(TRIM(B2))=0"],
    [{ subType: "timePeriod", operator: "yesterday" }, "=FLOOR(B2,1)=TODAY()-1"],
  ])("have the formula by which other programs go: %j", (rule, formula) => {
    expect(saidIn({ type: "highlightCell", ...rule }).formulas).toEqual([formula]);
  });

  it("begin icons where the page begins them, the lowest below all others, also on the way through a file", () => {
    const icon = (operator: string, value: number, iconId: string) => ({
      ...{ operator, iconType: "3Stars", iconId },
      value: { type: "num", value },
    });
    const config = [
      icon("greaterThan", 20, "0"),
      icon("greaterThanOrEqual", 10, "1"),
      icon("lessThanOrEqual", Number.MAX_SAFE_INTEGER, "2"),
    ];
    const condition = { ...saidIn({ type: "iconSet", isShowValue: true, config }), priority: 1 };
    const stopsAt = [
      { kind: "percent", value: "0" },
      { kind: "num", value: "10" },
      { kind: "num", value: "20", above: true },
    ];
    expect(condition.stopsAt).toEqual(stopsAt);
    const book = everythingBook();
    const [first, ...others] = book.sheets;
    const sheets = [{ ...first, conditions: [condition] }, ...others] as typeof book.sheets;
    const { bytes, lost } = saveBook(null, { ...book, sheets });
    const [read] = openFile(bytes, "icons.xlsx").book.sheets[0]?.conditions ?? [];
    expect(read?.stopsAt).toEqual(stopsAt);
    // ECMA-376 Part 1, 18.18.42 (from memory): files before the younger lists know no stars, these do.
    expect(read?.icons?.set).toBe("3Stars");
    expect(read?.younger).toBe(true);
    expect(lost.map(({ what }) => what)).not.toContain("the icons in B2:B4");
    const [shown] = conditionsJson([read as Condition], EXTENT);
    expect(shown?.rule).toMatchObject({ config: [{ operator: "greaterThan" }, {}, {}] });
  });

  it("have bars with all that the page knows of them, also on the way through a file", () => {
    const config = { min: { type: "num", value: 0 }, max: { type: "max" }, isGradient: false };
    const rule = {
      type: "dataBar",
      isShowValue: false,
      config: { ...config, positiveColor: "#638EC6", nativeColor: "#AA0000" },
    };
    const condition = { ...saidIn(rule), priority: 1 };
    expect(condition.bar).toEqual({ solid: true, negative: "AA0000", hidesValue: true });
    const { read, lost, sheet } = throughFile({ conditions: [condition] });
    const ends = condition.stopsAt?.map((end) => ({ ...end, color: "638EC6" }));
    expect(read.conditions).toEqual([{ ...condition, stopsAt: ends }]);
    expect(conditionsJson(read.conditions, EXTENT)[0]?.rule).toEqual(rule);
    expect(lost).toEqual([]);
    // [MS-XLSX] 2.6.29 (from memory): the form that newer programs read is bound to the older one by an id.
    const [, id = ""] = /<x14:id>([^<]+)</.exec(sheet) ?? [];
    expect(sheet).toContain(`<x14:cfRule type="dataBar" id="${id}">`);
  });

  it("have icons that were chosen one by one", () => {
    const icon = (value: number, iconType: string, iconId: string) => ({
      ...{ operator: "greaterThanOrEqual", iconType, iconId },
      value: { type: "num", value },
    });
    const of = (...config: ReturnType<typeof icon>[]) => ({
      ...saidIn({ type: "iconSet", isShowValue: true, config }),
      priority: 1,
    });
    const whole = of(icon(9, "3Flags", "0"), icon(5, "3Flags", "1"), icon(0, "3Flags", "2"));
    expect(throughFile({ conditions: [whole] })).toMatchObject({ lost: [], read: { conditions: [whole] } });
    // [MS-XLSX] 2.6.11 (from memory): each by its set and its place there, from the lowest, 0, up.
    const [flag, star, none] = ["3Flags", "5Rating", "NoIcons"];
    for (const [mixed, written] of [
      [
        of(icon(9, "3Flags", "0"), icon(5, "5Rating", "1"), icon(0, "3Flags", "2")),
        [
          [flag, 0],
          [star, 3],
          [flag, 2],
        ],
      ],
      [
        of(icon(9, "3Flags", "0"), icon(5, "3Flags", "2"), icon(0, "3Flags", "1")),
        [
          [flag, 1],
          [flag, 0],
          [flag, 2],
        ],
      ],
      [
        of(icon(9, "EMPTY_ICON_TYPE", ""), icon(5, "3Flags", "1"), icon(0, "3Flags", "2")),
        [
          [flag, 0],
          [flag, 1],
          [none, 0],
        ],
      ],
    ] as const) {
      const { lost, read, sheet } = throughFile({ conditions: [mixed] });
      expect(lost).toEqual([]);
      expect(read.conditions).toEqual([{ ...mixed, younger: true }]);
      const icons = [...sheet.matchAll(/<x14:cfIcon iconSet="(\w+)" iconId="(\d)"\/>/g)];
      expect(icons.map(([, set, place]) => [set, Number(place)])).toEqual(written);
      // And on to the page again, as it was chosen there.
      expect(saidIn(conditionsJson(read.conditions, EXTENT)[0]?.rule as object).icons).toEqual(mixed.icons);
    }
    const four = [icon(5, "EMPTY_ICON_TYPE", ""), icon(0, "3Flags", "2"), icon(0, "", ""), icon(0, "", "")];
    expect(throughFile({ conditions: [of(...four)] }).read.conditions[0]?.icons?.set).toBe("4Arrows");
  });

  it("have other icons where files have no such ones, and that is said", () => {
    const config = ["0", "1", "2", "3", "4"].map((iconId, i) => ({
      ...{ operator: "greaterThanOrEqual", iconType: "_5Felling", iconId },
      value: { type: "num", value: 4 - i },
    }));
    const faces = { ...saidIn({ type: "iconSet", isShowValue: true, config }), priority: 1 };
    const { lost, read } = throughFile({ conditions: [faces] });
    expect(lost.map(({ what }) => what)).toEqual(["the icons in B2:B4"]);
    expect(read.conditions[0]?.icons?.set).toBe("5Rating");
  });

  it("say a bound that is worked out as files do, without a sign before it", () => {
    const end = (value: string, color: string, index: number) => ({ index, color, value: { type: "formula", value } });
    const config = [end("=$A$1", "#FFFFFF", 0), end("=$A$2", "#FF0000", 1)];
    const condition = saidIn({ type: "colorScale", config });
    expect(condition.stopsAt?.map(({ value }) => value)).toEqual(["$A$1", "$A$2"]);
    expect(conditionsJson([condition], EXTENT)[0]?.rule).toEqual({ type: "colorScale", config });
  });
});

describe("rules of what may be typed, made in the page", () => {
  const made = (rule: Partial<ValidationJson>) => validationOf({ uid: "new", type: "any", ranges, ...rule }, EXTENT);

  it("hold days as days", () => {
    const days = made({ type: "date", operator: "between", formula1: "2024-01-01", formula2: "2024/02/01 12:00:00" });
    // LibreOffice's DATE(2024;1;1), from memory: 45292.
    expect(days?.formulas).toEqual(["=45292", "=45323.5"]);
    expect(made({ type: "date", operator: "equal", formula1: "=TODAY()" })?.formulas).toEqual(["=TODAY()"]);
  });

  it("only warn where the page only warns", () => {
    expect(made({ type: "decimal", operator: "equal", formula1: "100" })?.onWrong).toBe("warning");
  });

  it("hold of a box to tick what it may hold", () => {
    expect(made({ type: "checkbox" })).toMatchObject({ kind: "list", formulas: ['="1,0"'] });
  });

  it("say that files know no box to tick", () => {
    const box = made({ type: "checkbox" });
    const { lost, read } = throughFile({ validations: box ? [box] : [] });
    expect(lost.map(({ what }) => what)).toEqual(["the boxes to tick in B2:B4"]);
    expect(read.validations).toMatchObject([{ kind: "list", formulas: ['="1,0"'] }]);
  });
});

it("keeps how a cell is aligned where the sheet knows no such way, when its look is changed", () => {
  const { styles } = everythingBook();
  const [plain, , , , across, stacked] = styles as Required<typeof styles>;
  if (!plain || !across || !stacked) throw new Error("no such styles");
  for (const style of [across, stacked]) {
    expect(styleOf({ ...styleData(style), bl: 1 }, plain).align).toEqual(style.align);
  }
  expect(styleOf({ ...styleData(across), ht: 3 }, plain).align).toEqual({ ...across.align, horizontal: "right" });
});
