import { children, type Element, within } from "../xml/tree";
import type { Relationship } from "../zip/package";
import type { Package } from "../zip/unpack";
import { youngerRules } from "./conditions";
import { countDrawn } from "./drawings";
import type { Remarks } from "./remarks";
import type { SheetPart } from "./sheetPart";
import { isOn } from "./values";

/** Says what a sheet holds that the page does not show. */
export function remarkOnSheet(
  sheet: string,
  { cells, others }: SheetPart,
  related: readonly Relationship[],
  pack: Package,
  remarks: Remarks,
): void {
  const find = (name: string): Element | undefined => others.find((one) => one.name === name);
  const ofKind = (...kinds: string[]): Relationship[] => related.filter(({ kind }) => kinds.includes(kind));
  const kept = (count: number, one: string, many: string): void => remarks.addKept(sheet, count, one, many);
  const extensions = find("extLst");

  const drawn = ofKind("drawing").map(({ target }) => countDrawn(pack, target));
  const sum = (of: "charts" | "pictures" | "shapes"): number => drawn.reduce((total, one) => total + one[of], 0);
  kept(sum("charts"), "a chart", "charts");
  kept(sum("pictures") + ofKind("image").length, "a picture", "pictures");
  kept(sum("shapes"), "a drawn shape", "drawn shapes");
  kept(ofKind("oleObject", "package").length, "an embedded object", "embedded objects");
  kept(ofKind("ctrlProp", "control").length, "a control", "controls");
  kept(ofKind("slicer", "timeline").length, "a filter panel", "filter panels");
  kept([...within(extensions, "x14:sparkline")].length, "a chart in a cell", "charts in cells");
  kept(
    youngerRules(
      others.filter(({ name }) => name === "conditionalFormatting"),
      extensions,
    ),
    "a conditional format of a younger kind",
    "conditional formats of a younger kind",
  );
  kept(children(find("customSheetViews"), "customSheetView").length, "a custom view", "custom views");
  kept(children(find("scenarios"), "scenario").length, "a scenario", "scenarios");
  kept(
    [...within(find("rowBreaks"), "brk"), ...within(find("colBreaks"), "brk")].length,
    "a page break",
    "page breaks",
  );
  if (
    cells.outlined ||
    [...within(find("cols"), "col")].some(({ attributes }) => Number(attributes.outlineLevel) > 0)
  ) {
    kept(1, "an outline", "");
  }

  const pivots = ofKind("pivotTable").length;
  if (pivots > 0) {
    remarks.add(
      sheet,
      pivots === 1 ? "a pivot table" : `${pivots} pivot tables`,
      "The page shows the figures that were worked out last and does not refresh them; the file keeps all of it.",
    );
  }
  if (cells.dataTables > 0) {
    remarks.add(
      sheet,
      cells.dataTables === 1 ? "a data table of what-if values" : `${cells.dataTables} data tables of what-if values`,
      "The page shows the values that were worked out last and does not work them out anew; the file keeps all of it.",
    );
  }
  const { elsewhere } = cells.formulas;
  if (elsewhere > 0) {
    remarks.add(
      sheet,
      elsewhere === 1
        ? "a formula that looks into another workbook"
        : `${elsewhere} formulas that look into other workbooks`,
      "The page shows what was worked out last; the file keeps such a formula as long as its cell stays where it is and nothing is typed over it.",
    );
  }
  if (cells.lostFormulas > 0) {
    remarks.add(
      sheet,
      cells.lostFormulas === 1
        ? "a formula that is incomplete in the file"
        : `${cells.lostFormulas} formulas that are incomplete in the file`,
      "The page shows the values that were worked out last: look at them in the program that made the file.",
    );
  }
  if (isOn(find("sheetProtection")?.attributes.sheet)) {
    remarks.add(sheet, "sheet protection", "Here every cell can be changed; the file stays protected when you save.");
  }
  if (ofKind("threadedComment").length > 0) {
    remarks.add(sheet, "conversations in comments", "The page shows them as notes; the file keeps them as they are.");
  }
  if (isOn(find("sheetFormatPr")?.attributes.zeroHeight)) {
    remarks.add(sheet, "hidden empty rows", "The page shows them; they stay hidden in the file when you save.");
  }
}
