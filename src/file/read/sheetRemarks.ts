import { children, type Element, within } from "../xml/tree";
import type { Relationship } from "../zip/package";
import type { Package } from "../zip/unpack";
import { countDrawn } from "./drawings";
import type { Remarks } from "./remarks";
import type { SheetPart } from "./sheetPart";
import { isOn } from "./values";
import { unreadRules } from "./youngerConditions";

type Find = (name: string) => Element | undefined;
type OfKind = (...kinds: string[]) => Relationship[];
type Kept = (count: number, one: string, many: string) => void;

/** Says what a sheet holds that the page does not show. */
export function remarkOnSheet(
  sheet: string,
  { cells, others }: SheetPart,
  related: readonly Relationship[],
  pack: Package,
  remarks: Remarks,
): void {
  const find: Find = (name) => others.find((one) => one.name === name);
  const ofKind: OfKind = (...kinds) => related.filter(({ kind }) => kinds.includes(kind));
  const kept: Kept = (count, one, many) => remarks.addKept(sheet, count, one, many);
  const say = (what: string, consequence: string): void => remarks.add(sheet, what, consequence);
  remarkOnDrawn(pack, find, ofKind, kept);
  const rules = others.filter(({ name }) => name === "conditionalFormatting");
  kept(
    unreadRules(rules, find("extLst")),
    "a conditional format of a younger kind",
    "conditional formats of a younger kind",
  );
  const byDeviation = rules
    .flatMap((one) => children(one, "cfRule"))
    .filter(({ attributes }) => Number(attributes.stdDev) > 0);
  kept(
    byDeviation.length,
    "a conditional format by the deviation from the average",
    "conditional formats by the deviation from the average",
  );
  remarkOnViews(cells.outlined, find, kept);
  remarkOnWorkedOut(cells, ofKind("pivotTable").length, say);
  if (isOn(find("sheetProtection")?.attributes.sheet)) {
    say("sheet protection", "Here every cell can be changed; the file stays protected when you save.");
  }
  if (ofKind("threadedComment").length > 0) {
    say("conversations in comments", "The page shows them as notes; the file keeps them as they are.");
  }
  if (isOn(find("sheetFormatPr")?.attributes.zeroHeight)) {
    say("hidden empty rows", "The page shows them; they stay hidden in the file when you save.");
  }
}

/** What stands over the cells. */
function remarkOnDrawn(pack: Package, find: Find, ofKind: OfKind, kept: Kept): void {
  const drawn = ofKind("drawing").map(({ target }) => countDrawn(pack, target));
  const sum = (of: "charts" | "pictures" | "shapes"): number => drawn.reduce((total, one) => total + one[of], 0);
  kept(sum("charts"), "a chart", "charts");
  kept(sum("pictures") + ofKind("image").length, "a picture", "pictures");
  kept(sum("shapes"), "a drawn shape", "drawn shapes");
  kept(ofKind("oleObject", "package").length, "an embedded object", "embedded objects");
  kept(ofKind("ctrlProp", "control").length, "a control", "controls");
  kept(ofKind("slicer", "timeline").length, "a filter panel", "filter panels");
  kept([...within(find("extLst"), "x14:sparkline")].length, "a chart in a cell", "charts in cells");
}

/** Other ways in which the sheet may be looked at. */
function remarkOnViews(outlined: boolean, find: Find, kept: Kept): void {
  kept(children(find("customSheetViews"), "customSheetView").length, "a custom view", "custom views");
  kept(children(find("scenarios"), "scenario").length, "a scenario", "scenarios");
  kept([...within(find("colBreaks"), "brk")].length, "a page break between columns", "page breaks between columns");
  const columns = [...within(find("cols"), "col")];
  const isOutlined = outlined || columns.some(({ attributes }) => Number(attributes.outlineLevel) > 0);
  kept(isOutlined ? 1 : 0, "an outline", "");
}

/** What the page shows as it was worked out last. */
function remarkOnWorkedOut(
  { dataTables, formulas: { elsewhere }, lostFormulas }: SheetPart["cells"],
  pivots: number,
  say: (what: string, consequence: string) => void,
): void {
  const counted = (count: number, one: string, many: string, consequence: string): void => {
    if (count > 0) say(count === 1 ? one : `${count} ${many}`, consequence);
  };
  counted(
    pivots,
    "a pivot table",
    "pivot tables",
    "The page shows the figures that were worked out last and does not refresh them; the file keeps all of it.",
  );
  counted(
    dataTables,
    "a data table of what-if values",
    "data tables of what-if values",
    "The page shows the values that were worked out last and does not work them out anew; the file keeps all of it.",
  );
  counted(
    elsewhere,
    "a formula that looks into another workbook",
    "formulas that look into other workbooks",
    "The page shows what was worked out last; the file keeps such a formula as long as its cell stays where it is and nothing is typed over it.",
  );
  counted(
    lostFormulas,
    "a formula that is incomplete in the file",
    "formulas that are incomplete in the file",
    "The page shows the values that were worked out last: look at them in the program that made the file.",
  );
}
