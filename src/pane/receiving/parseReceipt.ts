import { tidy } from "../../core/tidy";
import type { Receipt } from "../../runsheet/record/receipt";
import { parseNumber } from "../parseNumber";
import { serialOf } from "../today";
import { RECEIVING } from "../words/receiving";

/** A receipt as it is typed. */
export interface TypedReceipt {
  readonly date: string;
  readonly item: string;
  readonly lot: string;
  readonly quantity: string;
  readonly unit: Receipt["unit"];
  /** Whether nobody chose it for this receipt: it is that of the one before. */
  readonly isUnitKept?: boolean;
  readonly paid: string;
  readonly bestBefore: string;
  readonly note: string;
}

/** What is typed of it, by field. */
export type ReceiptField = Exclude<keyof TypedReceipt, "isUnitKept">;

/** What is wrong with what is typed, by field. What is still blank and needed is told apart. */
export interface ParsedReceipt {
  readonly receipt: Receipt | undefined;
  readonly wrong: Readonly<Partial<Record<ReceiptField, string>>>;
  readonly blank: Readonly<Partial<Record<ReceiptField, string>>>;
}

type Parsed<T> = { readonly value: T } | { readonly wrong: string };

export function parseReceipt(typed: TypedReceipt): ParsedReceipt {
  const { unit, isUnitKept } = typed;
  const [item, lot, note] = [typed.item, typed.lot, typed.note].map((text) => text.trim().replace(/\s+/g, " "));
  const isBlank = { item: item === "", quantity: typed.quantity.trim() === "" };
  const parsed = {
    date: day(typed.date),
    quantity: isBlank.quantity ? { value: 0 } : quantityIn(typed.quantity, unit),
    paid: typed.paid.trim() === "" ? { value: undefined } : moneyIn(typed.paid),
    bestBefore: typed.bestBefore === "" ? { value: undefined } : day(typed.bestBefore),
  };
  const wrong = Object.fromEntries(
    Object.entries(parsed).flatMap(([field, one]) => ("wrong" in one ? [[field, one.wrong]] : [])),
  );
  const blank = {
    ...(isBlank.item && { item: RECEIVING.noItem }),
    ...(isBlank.quantity && { quantity: RECEIVING.noQuantity }),
  };
  const { date, quantity, paid, bestBefore } = parsed;
  const isWhole = Object.keys({ ...wrong, ...blank }).length === 0;
  if (!isWhole || "wrong" in date || "wrong" in quantity || "wrong" in paid || "wrong" in bestBefore) {
    return { receipt: undefined, wrong, blank };
  }
  const numbers = { date: date.value, quantity: quantity.value, paid: paid.value, bestBefore: bestBefore.value };
  return {
    receipt: {
      ...numbers,
      item: item as string,
      lot: lot as string,
      note: note as string,
      unit,
      ...(isUnitKept && { isUnitKept }),
    },
    wrong,
    blank,
  };
}

function day(typed: string): Parsed<number> {
  const serial = serialOf(typed);
  return serial === undefined ? { wrong: RECEIVING.noDay } : { value: serial };
}

/** A quantity, also as packs are counted: `2 x 5`. */
function quantityIn(typed: string, unit: Receipt["unit"]): Parsed<number> {
  const factors = typed.split(/[x×*]/i).map((one) => parseNumber("weight", one.replace("%", "?")));
  const wrong = factors.find((one) => "wrong" in one);
  if (wrong) return wrong;
  const value = factors.reduce((product, one) => product * ("value" in one ? one.value : 1), 1);
  const quantity = tidy(value);
  if (unit === "pieces" && !Number.isInteger(quantity)) return { wrong: RECEIVING.notWhole(String(quantity)) };
  return { value: quantity };
}

/** Money, with or without the sign of a currency; what was given away cost 0. */
function moneyIn(typed: string): Parsed<number> {
  const text = typed.replace(/[$€£]/g, "").trim();
  if (/^0+([.,]0*)?$/.test(text)) return { value: 0 };
  const parsed = parseNumber("weight", text.replace("%", "?"));
  if ("value" in parsed || /^write /.test(parsed.wrong)) return parsed;
  return { wrong: RECEIVING.noMoney(typed.trim()) };
}
