import { child, children, type Element } from "../xml/tree";
import { relationships } from "../zip/package";
import type { Package } from "../zip/unpack";
import type { Remarks } from "./remarks";
import { isOn } from "./values";

/** Says what a workbook holds beside its sheets that the page does not show or does in its own way. */
export function remarkOnWorkbook(pack: Package, path: string, root: Element, remarks: Remarks): void {
  const related = relationships(pack, path);
  const count = (kind: string): number => related.filter((one) => one.kind === kind).length;
  const say = (what: string, consequence: string): void => remarks.add(null, what, consequence);

  const links = count("externalLink");
  if (links > 0) {
    say(
      links === 1 ? "a link to another workbook" : `links to ${links} other workbooks`,
      "The page cannot look into other workbooks; the file keeps what it links to.",
    );
  }
  if (count("connections") > 0) {
    say(
      "queries of data from elsewhere",
      "The page shows what was fetched last and fetches nothing; the file keeps them.",
    );
  }
  if (count("FeaturePropertyBag") > 0) {
    say("boxes to tick", "The page shows TRUE and FALSE there; the boxes stay in the file when you save.");
  }
  remarks.addKept(
    null,
    children(child(root, "customWorkbookViews"), "customWorkbookView").length,
    "a custom view",
    "custom views",
  );
  if (isOn(child(root, "workbookProtection")?.attributes.lockStructure)) {
    say("protection of the workbook", "Here sheets can be added and renamed; the file stays protected when you save.");
  }
  if (isOn(child(root, "workbookPr")?.attributes.date1904)) {
    say(
      "days counted from 1904",
      "The page counts them from 1900, as the file does once you save changes; they stay the same days. Look at formulas that have days written in them as numbers.",
    );
  }
  const { iterate, fullPrecision } = child(root, "calcPr")?.attributes ?? {};
  if (isOn(iterate)) {
    say("formulas that go in circles", "The file lets formulas refer to themselves; the page shows an error there.");
  }
  if (!isOn(fullPrecision, true)) {
    say(
      "figures computed as shown",
      "The file computes with rounded figures, the page with all digits: results can differ.",
    );
  }
  if (relationships(pack, "").some(({ type }) => type.includes("digital-signature"))) {
    say("a digital signature", "Saving changes the file, and the signature no longer holds.");
  }
}
