import type { StartUp } from "../host/excel/startup";
import { pressable } from "./pressable";

const WORDS = {
  refuse: "Open this workbook without Pourwright",
  refused:
    "From the next time it is saved, Excel opens this workbook without Pourwright, and nobody who lacks it is told of an error. POUR formulas show their saved numbers until the pane is opened.",
  allow: "Open this workbook with Pourwright",
  allowed: "From the next time it is saved, Excel loads Pourwright when this workbook is opened.",
} as const;

/** Lets the user take the mark away by which Excel loads the add-in with this workbook, and set it again. */
export async function offerStartUp(startUp: StartUp): Promise<void> {
  let isRefused = await startUp.isRefused();
  const { button } = pressable("#startup", async () => {
    await (isRefused ? startUp.allow() : startUp.refuse());
    isRefused = !isRefused;
    name();
    return isRefused ? WORDS.refused : WORDS.allowed;
  });
  const name = () => {
    button.textContent = isRefused ? WORDS.allow : WORDS.refuse;
  };
  name();
}
