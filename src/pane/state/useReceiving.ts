import { useMemo, useState } from "react";
import { sameName } from "../../runsheet/sameName";
import type { Book } from "../actions/book";
import { receive } from "../actions/receive";
import type { ReceiptField, TypedReceipt } from "../receiving/parseReceipt";
import { planReceipt, type StockBeside, shownOf } from "../receiving/planReceipt";
import { today } from "../today";
import { RECEIVING } from "../words/receiving";
import type { Kept } from "./kept";
import type { RunTask } from "./useTask";

const BLANK = { item: "", lot: "", quantity: "", paid: "", bestBefore: "", note: "" };

/** What is typed of a receipt, the row it makes, and the press that adds it. */
export function useReceiving(book: Book, beside: StockBeside | undefined, run: RunTask) {
  const { kept } = book;
  const [isPressed, setPressed] = useState(false);
  const [given, setGiven] = useState<Omit<TypedReceipt, "unit"> & { unit?: TypedReceipt["unit"] }>(() => ({
    ...BLANK,
    date: today(),
  }));
  const unit = given.unit ?? usualUnit(given.item, beside, kept);
  const typed = useMemo((): TypedReceipt => ({ ...given, unit }), [given, unit]);
  const plan = useMemo(
    () => (beside && beside.refused === undefined ? planReceipt(typed, beside) : undefined),
    [typed, beside],
  );
  const add = async () => {
    setPressed(true);
    if (!plan?.ready) return;
    const shown = shownOf(plan);
    await run(RECEIVING.add, async () => {
      const { words, isAdded } = await receive(book, typed, shown);
      if (isAdded) {
        setGiven(({ unit: chosen }) => ({
          ...BLANK,
          date: typed.date,
          ...(chosen && { unit: chosen, isUnitKept: true }),
        }));
        setPressed(false);
      }
      return words;
    });
  };
  return {
    typed,
    type: (field: ReceiptField, text: string) =>
      setGiven((before) => ({ ...before, [field]: text, ...(field === "unit" && { isUnitKept: false }) })),
    names: [...(beside?.known.names.values() ?? [])],
    refused: beside?.refused,
    ready: plan?.ready,
    wrong: { ...(isPressed && plan?.blank), ...plan?.wrong },
    add,
  };
}

/** Until one is chosen: pieces of what is counted elsewhere, and the setting's unit of all else. */
function usualUnit(item: string, beside: StockBeside | undefined, kept: Kept | undefined): TypedReceipt["unit"] {
  const key = sameName(item);
  const isCounted = beside?.known.counted.has(key) && !beside.known.weighed.has(key);
  return isCounted ? "pieces" : (kept?.choices.unit ?? "g");
}

export type Receiving = ReturnType<typeof useReceiving>;
