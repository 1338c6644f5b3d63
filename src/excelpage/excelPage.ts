import "./excelPage.css";
import { ExcelHost } from "../host/excel/adapter";
import { repairFormulas } from "../host/excel/repair";
import { startUp } from "../host/excel/startup";
import { mountPane } from "../pane/mount";

const pane = document.querySelector("main") as HTMLElement;

open().catch((fault: unknown) => say(`The pane could not be opened: ${wordsOf(fault)}`));

async function open(): Promise<void> {
  if (typeof Office === "undefined")
    return say("A part of Pourwright did not load: office/office.js. Reload the pane.");
  if (!(await startUp())) return sayOutsideExcel();
  mountPane(pane, new ExcelHost());
  offerRepair();
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

/** Formulas typed while the add-in was away do not come to life by themselves; only Excel has that trouble. */
function offerRepair(): void {
  const footer = document.querySelector("#fix") as HTMLElement;
  const button = footer.querySelector("button") as HTMLButtonElement;
  const output = footer.querySelector("output") as HTMLOutputElement;
  footer.hidden = false;
  button.addEventListener("click", async () => {
    button.disabled = true;
    output.textContent = "Looking through the sheets…";
    output.textContent = await repairFormulas().then(summary, wordsOf);
    button.disabled = false;
  });
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

function wordsOf(fault: unknown): string {
  return fault instanceof Error ? fault.message : String(fault);
}
