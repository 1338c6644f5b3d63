import type { Validation } from "../book";
import { toFileFormula } from "../formula/toFile";
import { areaList } from "./addresses";
import { withoutExtension } from "./extensions";
import { type Cut, element, escapeText } from "./rawXml";
import { put } from "./sheetOrder";

/** Where newer programs say rules that refer to other sheets. They are written with the others, which all read. */
const NEWER = "{CCE6A557-97BC-4b89-ADB6-D9C93CAAB3DF}";

/** What may be typed into cells. */
export function putValidations(sheet: Cut, validations: readonly Validation[]): void {
  const rules = validations.filter(({ areas }) => areas.length > 0).map(ruleXml);
  put(
    sheet,
    "dataValidations",
    rules.length === 0 ? "" : element("dataValidations", { count: rules.length }, ...rules),
  );
  withoutExtension(sheet, NEWER);
}

function ruleXml({ areas, kind, operator, formulas, prompt, error, ...rule }: Validation): string {
  const compares = !["any", "list", "custom"].includes(kind);
  return element(
    "dataValidation",
    {
      type: kind === "any" ? null : kind,
      errorStyle: ["stop", "none"].includes(rule.onWrong) ? null : rule.onWrong,
      operator: compares && operator !== "between" ? operator : null,
      allowBlank: rule.allowsBlank || null,
      // It says the opposite of its name.
      showDropDown: kind === "list" && !rule.showsList ? 1 : null,
      showInputMessage: prompt ? 1 : null,
      showErrorMessage: rule.onWrong === "none" ? null : 1,
      errorTitle: error?.title || null,
      error: error?.text || null,
      promptTitle: prompt?.title || null,
      prompt: prompt?.text || null,
      sqref: areaList(areas),
    },
    ...formulas.slice(0, 2).map((formula, i) => element(`formula${i + 1}`, {}, escapeText(toFileFormula(formula)))),
  );
}
