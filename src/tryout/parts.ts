/** What the parts of the page know of each other: files in and out, the browser's own storage, and what wires them. */

import type { IWorkbookData } from "@univerjs/core";
import type { Spreadsheet } from "../host/univer/start";

/**
 * What a workbook was made of: the bytes of a file, a sample by its id (its file stands under `samples/` beside the
 * page), or nothing, for one that began here.
 */
export type Original = Uint8Array | { readonly sample: string } | null;

/** A workbook that is not known yet by an id of its own. */
export interface NewWorkbook {
  /** What the maker calls it; of a file its name without the ending. */
  readonly name: string;
  /** Its id in here is anybody's: each opening gives the spreadsheet a new one, which was never used before. */
  readonly data: IWorkbookData;
  readonly original: Original;
  /** The file on disk that a press on Save may write, where the browser has given one. */
  readonly handle?: FileSystemFileHandle;
}

/** A workbook of the maker's. */
export interface OpenWorkbook extends NewWorkbook {
  /** Names it for good, whatever it is called. */
  readonly id: string;
}

/** What both parts are given of the page. */
export interface PageHooks {
  readonly spreadsheet: Spreadsheet;
  /**
   * What is open, with all that was done in it so far, a cell that is being typed in included; null before anything is.
   * Its data is what the spreadsheet works on, so only to be read.
   */
  current(): Promise<OpenWorkbook | null>;
  /** Opens a workbook in place of the one that is open. When it rejects, that one is there as it was. */
  open(workbook: OpenWorkbook): Promise<void>;
}

/** What a press or a drop opens and saves. */
export interface Files {
  /** Lets the maker choose a file of hers and opens it, as the button Open does. */
  choose(): void;
  /** Saves the open workbook as a file, as the button Save does. */
  save(): void;
  /** Takes away what was said of a file: another workbook is open. */
  clear(): void;
}

export interface FileHooks extends PageHooks {
  /** Opens what a file held and keeps it as a workbook of its own. */
  openNew(workbook: NewWorkbook): Promise<void>;
  /** Notes that a workbook is now what this file holds: later saves compare with these bytes. */
  saved(id: string, file: { readonly original: Uint8Array; readonly handle?: FileSystemFileHandle }): Promise<void>;
}

/** Puts Open and Save, their progress and their questions into the header; a drop anywhere on the page opens too. */
export type MountFiles = (element: HTMLElement, hooks: FileHooks) => Files;

/** How what is open is kept, in words that the header shows. */
export interface KeepStatus {
  /**
   * `safe`: all of it is kept. `waiting`: the last edit is not yet. `refused`: it is lost with the page. `elsewhere`:
   * another tab has it. `damaged`: it is kept, but of what was kept before something could not be read.
   */
  readonly state: "nothing" | "safe" | "waiting" | "refused" | "elsewhere" | "damaged";
  readonly text: string;
  /** What the maker can do about it, as a button beside the words. */
  readonly action?: { readonly label: string; readonly press: () => void };
}

/** The browser's own storage. Nothing in it rejects for want of storage: the status says so. */
export interface Keep {
  /** The workbook that was open last, as it was left; null the first time, or where nothing could be kept. */
  lastOpened(): Promise<OpenWorkbook | null>;
  /** A new workbook with an id of its own. It is kept at once, but a sample's copy only from its first edit on. */
  create(workbook: NewWorkbook): Promise<OpenWorkbook>;
  /** A kept workbook as it was left. Rejects with words for the maker when it is not there any more. */
  open(id: string): Promise<OpenWorkbook>;
  /** From now on keeps what is done in this workbook, which the spreadsheet shows, instead of the one before. */
  start(workbook: OpenWorkbook, spreadsheet: Spreadsheet): void;
  /** Keeps what is not kept yet of the open workbook, and follows it no longer. */
  stop(): Promise<void>;
  /** Notes the bytes and the file that a workbook was saved as. */
  saved(id: string, file: { readonly original: Uint8Array; readonly handle?: FileSystemFileHandle }): Promise<void>;
  status(): KeepStatus;
  /** Whether all that was done in the open workbook is kept, or was saved as a file since. */
  mayLeave(): boolean;
  /** Calls back whenever the status has changed; gives the way to stop that. */
  subscribe(callback: () => void): () => void;
}

export interface WorkbookHooks extends PageHooks {
  /** Shows the new name of the workbook that is open. */
  renamed(name: string): void;
  /** The open workbook was removed: the page offers its ways on again. */
  closed(): void;
  /** Saves the open workbook as a file: the way out where the browser keeps nothing. */
  saveFile(): void;
}

/** Puts My workbooks into the header: a button and the list behind it. */
export type MountWorkbooks = (element: HTMLElement, hooks: WorkbookHooks) => void;
