/** The browser's own storage, as the page uses it: which workbook is open, how it is kept, and who may change it. */

import { generateRandomId } from "@univerjs/core";
import type { Spreadsheet } from "../../host/univer/start";
import type { Keep, KeepStatus, NewWorkbook, OpenWorkbook, Original, WorkbookHooks } from "../parts";
import { type Claim, Claims } from "./claims";
import { freeName } from "./freeName";
import { KeepFault, keepFault } from "./keepFault";
import { type Recorded, Recorder } from "./recorder";
import { workbookOf } from "./slots";
import { type FileOf, type Listed, type NewState, Store } from "./store";
import { when } from "./when";

/** Under it a tab notes which workbook it shows, to show it again after a reload. */
const SHOWN = "pourwright workbook";

/** A workbook on its way from the storage to the spreadsheet. */
interface Fetched {
  readonly kept: Recorded["kept"];
  readonly lastNumber: number;
  /** None where another tab has it. */
  readonly claim: Claim | null;
  /** What the maker should know of how it was read. */
  readonly remark: string;
}

const ELSEWHERE = "This workbook is open in another tab. Here you can only look at it.";
const IN_VAIN = "Nothing has changed: this workbook is open in another tab, and here you can only look at it.";

interface Shown {
  workbook: OpenWorkbook;
  readonly spreadsheet: Spreadsheet;
  claim: Claim | null;
  /** None where it can only be looked at. */
  recorder: Recorder | null;
  remark: string;
  /** What is said while it can only be looked at. */
  elsewhere: string;
}

export class Keeping implements Keep {
  readonly #subscribers = new Set<() => void>();
  readonly #fetched = new Map<string, Fetched>();
  #shown: Shown | null = null;
  /** Why nothing is kept at all. */
  #refused: KeepFault | null = null;
  #hasAskedToPersist = false;
  hooks: WorkbookHooks | null = null;

  constructor(
    readonly store = new Store(),
    readonly claims = new Claims(),
  ) {
    // Only what was removed before this page was opened: another tab may still put back what it removed.
    void claims.whenAlone(() => store.purge().catch(() => undefined));
    store.ready().catch((fault: KeepFault) => this.#refuse(fault));
    addEventListener("beforeunload", (event) => {
      this.#shown?.recorder?.leave();
      if (!this.mayLeave()) event.preventDefault();
    });
  }

  /** The workbook that is open, if it is one of the kept ones. */
  get shownId(): string | null {
    return this.#shown?.workbook.id ?? null;
  }

  async lastOpened(): Promise<OpenWorkbook | null> {
    const known = await this.store.list().catch(() => []);
    const here = attempt(() => sessionStorage.getItem(SHOWN));
    const order = [...known.filter(({ id }) => id === here), ...known.filter(({ id }) => id !== here)];
    for (const { id } of order) {
      const workbook = await this.open(id).catch(() => null);
      if (workbook) return workbook;
    }
    return null;
  }

  async create(workbook: NewWorkbook): Promise<OpenWorkbook> {
    const known = await this.store.list().catch(() => []);
    const name = freeName(
      workbook.name,
      known.map((one) => one.name),
    );
    return { ...workbook, id: generateRandomId(), name };
  }

  async open(id: string): Promise<OpenWorkbook> {
    const claim = (await this.#ownClaim(id)) ?? (await this.claims.claim(id, ...this.#giveUp(id)));
    try {
      return await this.#fetch(id, claim);
    } catch (fault) {
      claim?.release();
      throw fault;
    }
  }

  start(workbook: OpenWorkbook, spreadsheet: Spreadsheet): void {
    const { id, original } = workbook;
    this.#shown?.recorder?.drop();
    this.#shown?.claim?.release();
    const fetched = this.#fetched.get(id);
    this.#fetched.delete(id);
    const shown: Shown = {
      workbook,
      spreadsheet,
      claim: fetched?.claim ?? null,
      recorder: null,
      remark: fetched?.remark ?? "",
      elsewhere: ELSEWHERE,
    };
    this.#shown = shown;
    this.#watchRefusals(shown);
    // Where the browser keeps nothing it refuses this too.
    attempt(() => sessionStorage.setItem(SHOWN, id));
    if (fetched && !fetched.claim) spreadsheet.setReadOnly(true);
    else {
      const first = () => firstState(shown.workbook);
      const atOnce = !fetched && !isSample(original);
      const recorded = { workbook: id, kept: null, lastNumber: 0, ...fetched, first, atOnce };
      shown.recorder = new Recorder(this.store, spreadsheet, recorded, () => this.#recorded());
      if (!fetched) void this.#claimNew(shown);
    }
    this.#tell();
  }

  async stop(): Promise<void> {
    const shown = this.#shown;
    await shown?.recorder?.stop();
    shown?.claim?.release();
    if (this.#shown === shown) this.#shown = null;
  }

  /** Keeps what is not kept yet of the open workbook. */
  async settle(): Promise<void> {
    await this.#shown?.recorder?.settle();
  }

  async saved(id: string, file: { readonly original: Uint8Array; readonly handle?: FileSystemFileHandle }) {
    if (this.#shown?.workbook.id === id) {
      this.#shown.workbook = { ...this.#shown.workbook, ...file };
      this.#shown.recorder?.savedAsFile();
    }
    const noted = { bytes: file.original, ...(file.handle && { handle: file.handle }) };
    await this.store.setFile(id, noted).catch((fault) => this.#refuse(keepFault(fault)));
  }

  /** Notes the name of the workbook that is open, which has changed. */
  renamed(name: string): void {
    if (this.#shown) this.#shown.workbook = { ...this.#shown.workbook, name };
  }

  mayLeave(): boolean {
    return !this.#shown?.recorder?.isAtRisk;
  }

  status(): KeepStatus {
    const shown = this.#shown;
    if (shown && !shown.recorder) {
      return {
        state: "elsewhere",
        text: shown.elsewhere,
        action: { label: "Work here instead", press: () => void this.#takeOver() },
      };
    }
    const recording = shown?.recorder?.recording;
    const fault = recording?.is === "failed" ? recording.fault : this.#refused;
    if (fault) return { state: "refused", text: fault.message, action: this.#wayOut(fault) };
    if (!shown || !recording) return { state: "nothing", text: "" };
    if (recording.is === "untouched") return { state: "nothing", text: "Kept from your first change on" };
    if (recording.is !== "kept") return { state: "waiting", text: "Keeping your change" };
    if (shown.remark) return { state: "damaged", text: shown.remark };
    return { state: "safe", text: `Kept ${when(recording.time)}` };
  }

  subscribe(callback: () => void): () => void {
    this.#subscribers.add(callback);
    return () => this.#subscribers.delete(callback);
  }

  async #fetch(id: string, claim: Claim | null): Promise<OpenWorkbook> {
    const listed = (await this.store.list()).find((one) => one.id === id);
    if (!listed) throw new Error("This workbook is not here any more. It may have been removed in another tab.");
    for (const state of listed.states) {
      const pieces = await this.store.read(state);
      const data = pieces && attempt(() => workbookOf(pieces));
      if (!pieces || !data) continue;
      const isLast = state === listed.states[0];
      const remark = isLast ? "" : `The last changes cannot be read any more. This is how it was ${when(state.time)}.`;
      const lastNumber = listed.states[0]?.number ?? 0;
      this.#fetched.set(id, { kept: { state, pieces }, lastNumber, claim, remark });
      await this.store.note(id, { opened: Date.now() });
      const file = await this.store.file(id);
      return { id, name: listed.name, data, ...originalOf(listed, file) };
    }
    throw new Error(`"${listed.name}" cannot be read any more: the browser has lost parts of it.`);
  }

  /** The claim that this tab has already, of a workbook that is shown or was about to be. */
  async #ownClaim(id: string): Promise<Claim | null> {
    const fetched = this.#fetched.get(id)?.claim;
    const shown = this.#shown;
    if (fetched || shown?.workbook.id !== id) return fetched ?? null;
    await shown.recorder?.settle();
    const { claim } = shown;
    shown.claim = null;
    return claim;
  }

  /** What this tab does when another one wants the workbook, and when another one has taken it. */
  #giveUp(id: string): [yieldTo: () => Promise<void>, onLost: () => void] {
    const lose = () => {
      const shown = this.#shown;
      if (shown?.workbook.id !== id) return;
      shown.recorder?.drop();
      shown.recorder = null;
      shown.claim = null;
      shown.spreadsheet.setReadOnly(true);
      this.#tell();
    };
    const yieldTo = async () => {
      if (this.#shown?.workbook.id === id) await this.#shown.recorder?.stop();
      lose();
    };
    return [yieldTo, lose];
  }

  #watchRefusals(shown: Shown): void {
    const leave = shown.spreadsheet.onRefusedChange(() => {
      if (this.#shown !== shown) return leave();
      shown.elsewhere = IN_VAIN;
      this.#tell();
    });
  }

  async #claimNew(shown: Shown): Promise<void> {
    const claim = await this.claims.claim(shown.workbook.id, ...this.#giveUp(shown.workbook.id));
    if (this.#shown === shown) shown.claim = claim;
    else claim?.release();
  }

  async #takeOver(): Promise<void> {
    const id = this.shownId;
    if (!id) return;
    try {
      const claim = await this.claims.takeOver(id, ...this.#giveUp(id));
      await this.hooks?.open(await this.#fetch(id, claim));
    } catch (fault) {
      this.#refuse(new KeepFault("refused", fault instanceof Error ? fault.message : String(fault)));
    }
  }

  #wayOut({ reason }: KeepFault): KeepStatus["action"] {
    if (reason === "newer") return { label: "Reload the page", press: () => location.reload() };
    return { label: "Save a file", press: () => this.hooks?.saveFile() };
  }

  #recorded(): void {
    const recording = this.#shown?.recorder?.recording;
    if (recording?.is === "kept") {
      this.#refused = null;
      if (this.#shown) this.#shown.remark = "";
      this.#askToPersist();
    }
    this.#tell();
  }

  /** Once there is something to lose. Without it the browser may throw things away when it runs out of room. */
  #askToPersist(): void {
    if (this.#hasAskedToPersist) return;
    this.#hasAskedToPersist = true;
    void navigator.storage?.persist?.().catch(() => false);
  }

  #refuse(fault: KeepFault): void {
    this.#refused = fault;
    this.#tell();
  }

  #tell(): void {
    for (const callback of [...this.#subscribers]) callback();
  }
}

const isSample = (original: Original): original is { sample: string } => original !== null && "sample" in original;

function firstState({ id, name, original, handle }: OpenWorkbook): NonNullable<NewState["first"]> {
  const bytes = original instanceof Uint8Array ? original : undefined;
  const sample = isSample(original) ? { sample: original.sample } : {};
  const file = bytes || handle ? { ...(bytes && { bytes }), ...(handle && { handle }) } : null;
  return { workbook: { id, name, opened: Date.now(), fileSize: bytes?.length ?? 0, ...sample }, file };
}

function originalOf({ sample }: Listed, file: FileOf | null): Pick<OpenWorkbook, "original" | "handle"> {
  const original = file?.bytes ?? (sample === undefined ? null : { sample });
  return { original, ...(file?.handle && { handle: file.handle }) };
}

function attempt<T>(run: () => T): T | null {
  try {
    return run();
  } catch {
    return null;
  }
}
