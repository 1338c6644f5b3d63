import { areaList, areasOf } from "../addresses";
import type { Validation } from "../book";
import { toFileFormula } from "../formula/toFile";
import { extensionOf, putExtension } from "./extensions";
import { isListTooLong, LONGEST_MESSAGE, LONGEST_TITLE } from "./limits";
import { matched } from "./matched";
import { attributeOf, type Cut, cut, element, escapeText, join, withAttributes } from "./rawXml";
import { put, rawOf } from "./sheetOrder";

/** Where newer programs say rules that refer to other sheets. They are written with the others, which all read. */
const NEWER = "{CCE6A557-97BC-4b89-ADB6-D9C93CAAB3DF}";

/** What may be typed into cells. Rules that are as they were, or only moved, keep their text. */
export function putValidations(sheet: Cut, before: readonly Validation[], now: readonly Validation[]): void {
  const list = cut(rawOf(sheet, "dataValidations") ?? "<dataValidations/>");
  const old = list.pieces.filter(({ name }) => name === "dataValidation").map(({ raw }) => raw);
  // Those of the younger list stand behind them in the book.
  const read = old.filter((raw) => areasOf(attributeOf(raw, "sqref") ?? "").length > 0);
  const matches = matched(before, now, ["areas"]);
  const rules = now.flatMap((rule, i) => {
    if (rule.areas.length === 0 || isListTooLong(rule)) return [];
    const match = matches[i];
    const raw = match && read[match.at];
    if (raw === undefined) return [ruleXml(rule)];
    return [match?.isAsWas ? raw : withAttributes(raw, { sqref: areaList(rule.areas) })];
  });
  const written = join({ ...list, pieces: rules.map((raw) => ({ name: "dataValidation", raw })) });
  put(sheet, "dataValidations", rules.length === 0 ? "" : withAttributes(written, { count: rules.length }));
  if (extensionOf(sheet, NEWER) !== undefined) putExtension(sheet, NEWER, "");
}

function ruleXml({ areas, kind, operator, formulas, prompt, error, ...rule }: Validation): string {
  const compares = !["any", "list", "custom"].includes(kind);
  const hasTwo = compares && (operator === "between" || operator === "notBetween");
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
      errorTitle: error?.title.slice(0, LONGEST_TITLE) || null,
      error: error?.text.slice(0, LONGEST_MESSAGE) || null,
      promptTitle: prompt?.title.slice(0, LONGEST_TITLE) || null,
      prompt: prompt?.text.slice(0, LONGEST_MESSAGE) || null,
      sqref: areaList(areas),
    },
    ...formulas
      .slice(0, hasTwo ? 2 : 1)
      .map((formula, i) => element(`formula${i + 1}`, {}, escapeText(toFileFormula(formula)))),
  );
}
