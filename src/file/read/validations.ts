import { areasOf } from "../addresses";
import type { Validation } from "../book";
import { DAYS_TO_1904 } from "../days";
import { fromFileFormula } from "../formula/fromFile";
import { child, children, type Element } from "../xml/tree";
import { unescaped } from "./text";
import { isOn } from "./values";

const KINDS = ["list", "whole", "decimal", "date", "time", "textLength", "custom"] as const;
const OPERATORS = [
  "notBetween",
  "equal",
  "notEqual",
  "greaterThan",
  "lessThan",
  "greaterThanOrEqual",
  "lessThanOrEqual",
] as const;

/** What may be typed where: from the sheet's own list, and from the younger one for lists on other sheets. */
export function readValidations(
  own: Element | undefined,
  younger: Element | undefined,
  from1904: boolean,
): Validation[] {
  return [
    ...children(own, "dataValidation").map((one) => validation(one, one.attributes.sqref, "", from1904)),
    ...children(younger, "x14:dataValidation").map((one) =>
      validation(one, child(one, "xm:sqref")?.text, "x14:", from1904),
    ),
  ].filter(({ areas }) => areas.length > 0);
}

function validation(element: Element, areas = "", prefix: string, from1904: boolean): Validation {
  const { attributes } = element;
  const { type, operator, errorStyle, promptTitle, prompt, errorTitle, error } = attributes;
  const kind = KINDS.find((one) => one === type) ?? "any";
  const how = OPERATORS.find((one) => one === operator) ?? "between";
  // Some programs write a second one where it means nothing.
  const hasTwo = kind !== "list" && kind !== "custom" && (how === "between" || how === "notBetween");
  const formulas = (hasTwo ? ["formula1", "formula2"] : ["formula1"]).flatMap((name) => {
    const found = child(element, prefix + name);
    const text = child(found, "xm:f")?.text ?? found?.text ?? "";
    if (text.trim() === "") return [];
    const isDay = from1904 && type === "date" && /^\s*\d+(?:\.\d+)?\s*$/.test(text);
    return [fromFileFormula(isDay ? String(Number(text) + DAYS_TO_1904) : text)];
  });
  const onWrong = errorStyle === "warning" || errorStyle === "information" ? errorStyle : "stop";
  const shown = isOn(attributes.showInputMessage) && (promptTitle || prompt);
  return {
    areas: areasOf(areas),
    kind,
    operator: how,
    formulas,
    allowsBlank: isOn(attributes.allowBlank),
    // The file says by this name that the list is not dropped down.
    showsList: !isOn(attributes.showDropDown),
    onWrong: isOn(attributes.showErrorMessage) ? onWrong : "none",
    ...(shown && { prompt: message(promptTitle, prompt) }),
    ...((errorTitle || error) && { error: message(errorTitle, error) }),
  };
}

const message = (title = "", text = ""): { title: string; text: string } => ({
  title: unescaped(title),
  text: unescaped(text),
});
