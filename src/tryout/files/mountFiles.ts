import "./files.css";
import type { Remark } from "../../file/book";
import type { FileHooks, Files, MountFiles, OpenWorkbook } from "../parts";
import { ACCEPTED, canChoosePlace, choosePlace, download, fileName, writeFile } from "./disk";
import { type Dropped, onDrop } from "./dropping";
import { lostWith, originalBytes } from "./original";
import { isStopped, underProgress } from "./progress";
import { remarkList } from "./remarkList";
import { askBeforeSaving } from "./saveDialog";
import { SavedWords } from "./savedWords";
import { openWorkbook, type SavedFile, saveWorkbook } from "./work";

/** Open and Save in the header, and a file dropped anywhere on the page. */
export const mountFiles: MountFiles = (element, hooks) => new FileButtons(element, hooks);

class FileButtons implements Files {
  readonly #input = document.createElement("input");
  readonly #open = button("Open", () => this.choose());
  readonly #save = button("Save", () => this.save());
  readonly #said = document.createElement("div");
  readonly #words = new SavedWords();
  #isBusy = false;

  constructor(
    private readonly element: HTMLElement,
    private readonly hooks: FileHooks,
  ) {
    element.classList.add("files");
    this.#input.type = "file";
    this.#input.accept = ACCEPTED.join(",");
    this.#input.hidden = true;
    this.#input.setAttribute("aria-label", "Workbook file");
    this.#input.addEventListener("change", () => {
      const files = [...(this.#input.files ?? [])].map((file) => ({ file, handle: null }));
      this.#input.value = "";
      this.#openFiles(files);
    });
    this.#said.className = "files-said";
    const hint = document.createElement("div");
    hint.className = "files-drop";
    hint.hidden = true;
    hint.textContent = "Drop a workbook file to open it";
    element.append(this.#open, this.#save, this.#input, this.#said);
    document.body.append(hint);
    onDrop(hint, (files) => this.#openFiles(files));
  }

  choose(): void {
    if (!this.#isBusy) this.#input.click();
  }

  save(): void {
    this.#run(() => this.#saveOpen());
  }

  clear(): void {
    this.#said.replaceChildren();
  }

  #openFiles(files: readonly Dropped[]): void {
    const [first] = files;
    if (!first) return;
    this.#run(async () => {
      if (files.length > 1) throw new Error("Open one file at a time.");
      const { file, handle } = first;
      const opened = await underProgress(this.element, `Opening ${file.name}`, (watched) =>
        openWorkbook(file, watched),
      );
      const { remarks, ...workbook } = opened;
      await this.hooks.openNew({ ...workbook, ...(handle && workbook.original && { handle }) });
      if (remarks.length > 0) this.#sayOnce(file.name, remarks);
      // What was pressed may be gone by now, and keys would go nowhere.
      this.hooks.spreadsheet.focus();
    });
  }

  async #saveOpen(): Promise<void> {
    const open = await this.hooks.current();
    if (!open) throw new Error("There is no workbook to save yet.");
    const original = await originalBytes(open.original);
    const file = await this.#made(open, original);
    const lost = [...lostWith(open.original), ...file.lost];
    const again = open.handle?.name ?? null;
    // What is written over, or left out, is said first; and a dialog for the place opens only soon after a press.
    const isAsked = again !== null || lost.length > 0 || (canChoosePlace() && !navigator.userActivation?.isActive);
    const decision = isAsked ? await askBeforeSaving({ lost, fileName: again }) : "another";
    if (decision === "cancel") return;
    const handle = decision === "again" ? open.handle : canChoosePlace() ? await choosePlace(open.name) : undefined;
    if (handle === null) return;
    if (handle) await writeFile(handle, file.bytes);
    else download(open.name, file.bytes);
    // What the sheet holds is told apart from the file that it was opened from, also after it was saved.
    await this.hooks.saved(open.id, { original: original ?? file.bytes, ...(handle && { handle }) });
    this.#say(this.#words.of(open.id, handle?.name ?? `${fileName(open.name)}.xlsx`, file.callsOurs));
  }

  /** The open workbook as a file, its formulas worked out. */
  async #made({ name }: OpenWorkbook, original: Uint8Array | null): Promise<SavedFile> {
    const { spreadsheet } = this.hooks;
    await spreadsheet.host.firstCells();
    let isChanged = false;
    const leave = spreadsheet.onDataChange(() => {
      isChanged = true;
    });
    const take = () => {
      isChanged = false;
      return { data: spreadsheet.snapshot(), worked: spreadsheet.workedOut(), original };
    };
    try {
      return await underProgress(this.element, `Saving ${name}`, (watched) =>
        saveWorkbook(take, () => isChanged, watched),
      );
    } finally {
      leave();
    }
  }

  /** One thing at a time; what goes wrong is said beside the buttons. */
  #run(work: () => Promise<void>): void {
    if (this.#isBusy) return;
    this.#setBusy(true);
    this.clear();
    work()
      .catch((fault: unknown) => {
        if (isStopped(fault)) this.#say("Stopped. Nothing was changed.");
        else this.#say(fault instanceof Error ? fault.message : String(fault), "alert");
      })
      .finally(() => this.#setBusy(false));
  }

  #setBusy(on: boolean): void {
    this.#isBusy = on;
    for (const one of [this.#open, this.#save]) one.setAttribute("aria-disabled", String(on));
  }

  #say(text: string, role: "status" | "alert" = "status"): void {
    const said = document.createElement("p");
    said.setAttribute("role", role);
    this.#said.replaceChildren(said);
    said.textContent = text;
  }

  /** What the page does not show of a file, until the maker has seen it. */
  #sayOnce(file: string, remarks: readonly Remark[]): void {
    const box = document.createElement("section");
    box.className = "files-remarks";
    box.setAttribute("aria-label", `About ${file}`);
    const first = document.createElement("p");
    first.setAttribute("role", "status");
    const seen = button("Understood", () => {
      box.remove();
      this.#open.focus();
    });
    box.append(first, remarkList(remarks, `About ${file}`), seen);
    this.#said.replaceChildren(box);
    first.textContent = `${file} is open. Of what it holds:`;
  }
}

function button(label: string, press: () => void): HTMLButtonElement {
  const made = document.createElement("button");
  made.type = "button";
  made.textContent = label;
  made.addEventListener("click", press);
  return made;
}
