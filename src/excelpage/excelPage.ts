import "./excelPage.css";
import { ExcelHost } from "../host/excel/adapter";
import { FunctionRuns } from "../host/excel/functionRuns";
import { repairFormulas } from "../host/excel/repair";
import { isInExcel, StartUp } from "../host/excel/startup";
import { mountPane } from "../pane/mount";
import { pressable, wordsOf } from "./pressable";
import { offerStartUp } from "./startUpButton";

const pane = document.querySelector("main") as HTMLElement;

open().catch((fault: unknown) => say(`The pane could not be opened: ${wordsOf(fault)}`));

async function open(): Promise<void> {
  if (typeof Office === "undefined")
    return say("A part of Pourwright did not load: office/office.js. Reload the pane.");
  if (!(await isInExcel(saySilence))) return sayOutsideExcel();
  const runs = new FunctionRuns();
  const startUp = new StartUp(runs);
  startUp.follow();
  mountPane(pane, new ExcelHost(undefined, runs));
  // Formulas typed while the add-in was away do not come to life by themselves; only Excel has that trouble.
  pressable("#fix", () => repairFormulas().then(summary), "Looking through the sheets…");
  // Without an answer of Excel there is nothing to offer.
  await offerStartUp(startUp).catch(() => {});
}

function saySilence(): void {
  say(
    "Excel has not answered for 10 seconds. Close the pane and open it again with the button Run sheet. If that does not help, close all windows of Excel and open the workbook anew; in a browser, reload the page.",
  );
}

function say(...words: (string | Node)[]): void {
  const message = document.createElement("p");
  message.className = "message";
  message.append(...words);
  pane.replaceChildren(message);
}

function sayOutsideExcel(): void {
  const link = document.createElement("a");
  link.href = "index.html";
  link.textContent = "page with a spreadsheet of its own";
  say(
    "This page works inside Excel: open it there with the button Run sheet on the Home tab. To work without Excel, use the ",
    link,
    ".",
  );
}

function summary({ repaired, protectedSheets, filteredSheets }: Awaited<ReturnType<typeof repairFormulas>>): string {
  const parts = [
    repaired === 0
      ? "No POUR formula to fix was found."
      : `${repaired} ${repaired === 1 ? "formula was" : "formulas were"} entered again.`,
  ];
  if (protectedSheets.length > 0) parts.push(`Protected sheets were left alone: ${protectedSheets.join(", ")}.`);
  if (filteredSheets.length > 0) {
    parts.push(
      `Filtered sheets were left alone: ${filteredSheets.join(", ")}. Clear their filters (Data tab, Clear) and press again.`,
    );
  }
  return parts.join(" ");
}
