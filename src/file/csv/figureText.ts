/** A text of a list as what it would be made of if it were a figure. */
export interface FigureText {
  /** Its sign and its digits, with what stands between them. */
  readonly bare: string;
  /** A currency sign in front, with the space behind it. */
  readonly before: string;
  /** A currency or percent sign behind, with the space in front of it. */
  readonly after: string;
}

/** Cents are no currency of their own. The real minus sign of Unicode is one like that of the keyboard. */
const PARTS = /^([-\u2212]?)((?!¢)\p{Sc}\s?)?([-\u2212]?)(.*?)(\s?(?:(?!¢)\p{Sc}|%))?$/su;

const DIGITS = "(?:[1-9]\\d{0,2}(?:[.,'\u2019 \u00a0\u202f]\\d{3})+|0|[1-9]\\d{0,14})(?:[.,]\\d+)?";
/** With a minus behind it or a dash in front, in brackets, or `12,-`. */
const LOOKS_LIKE_ONE = new RegExp(`^(?:[-\u2013]?${DIGITS}(?:[.,]?[-\u2212\u2013])?|\\(${DIGITS}\\))$`);
/** More digits behind a plus are a telephone number. */
const WITH_PLUS = /^\+\d{1,4}(?:[.,]\d+)?$/;

export function figureText(text: string): FigureText {
  if (!/\d/.test(text)) return { bare: text, before: "", after: "" };
  const [, sign = "", before = "", inner = "", bare = "", after = ""] = PARTS.exec(text) ?? [];
  if (before && after) return { bare: text, before: "", after: "" };
  return { bare: `${sign}${inner}${bare}`.replaceAll("\u2212", "-"), before, after };
}

/** A whole number in groups, which may be a telephone number or two numbers as well. */
export const isSpaced = ({ bare, before, after }: FigureText): boolean =>
  /^-?[1-9]\d{0,2}(?: \d{3})+$/.test(bare) && !before && !after;

/** Whether someone may have meant a number by a text that was not read as one. */
export function looksLikeFigure(text: string): boolean {
  const { bare } = figureText(text);
  return LOOKS_LIKE_ONE.test(bare) || WITH_PLUS.test(bare);
}
