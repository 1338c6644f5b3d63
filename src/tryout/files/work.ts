/** The page's side of the worker: opens files and makes them, with a word on how far it is, and a stop. */

import type { IWorkbookData } from "@univerjs/core";
import type { Remark } from "../../file/book";
import type { WorkedOut } from "../../host/univer/file/fromUniver";
import type { Answer } from "./fileTasks";
import type { Failure, Request } from "./fileWorker";
import { Assembly, piecesOf } from "./pieces";

export interface Watched {
  readonly signal: AbortSignal;
  /** Called with the share that is done, 0 to 1. */
  readonly onProgress: (share: number) => void;
}

export interface OpenedFile {
  /** Of the file, without the ending. */
  readonly name: string;
  readonly data: IWorkbookData;
  /** The bytes of a workbook file; null for one that is only a list of values. */
  readonly original: Uint8Array | null;
  readonly remarks: readonly Remark[];
}

export interface SavedFile {
  readonly bytes: Uint8Array;
  /** What the file cannot carry. */
  readonly lost: readonly Remark[];
  /** Whether one of its formulas calls one of our functions. */
  readonly callsOurs: boolean;
}

/** What a file holds. Rejects with words for the maker; what is open stays as it is. */
export async function openWorkbook(file: File, watched: Watched): Promise<OpenedFile> {
  const bytes = await bytesOf(file);
  const assembly = new Assembly();
  const send = async (post: (request: Request) => void) => {
    post({ open: { bytes, name: file.name } });
    return true;
  };
  const { remarks } = await ask(watched, send, {
    piece: (piece) => assembly.add(piece),
    end: (answer) => ("opened" in answer ? answer.opened : null),
  });
  const isPackage = bytes[0] === 0x50 && bytes[1] === 0x4b;
  return {
    name: file.name.replace(/\.[^.]*$/, "") || file.name,
    data: assembly.whole(),
    original: isPackage ? bytes : null,
    remarks,
  };
}

export interface ToSave {
  readonly data: Readonly<IWorkbookData>;
  readonly worked: WorkedOut;
  readonly original: Uint8Array | null;
}

/** A file of a workbook. `take` gives it as it is, and is asked again when it was changed on the way. */
export async function saveWorkbook(take: () => ToSave, isChanged: () => boolean, watched: Watched): Promise<SavedFile> {
  for (;;) {
    const { data, worked, original } = take();
    const send = async (post: (request: Request) => void) => {
      for (const piece of piecesOf(data)) {
        post({ piece });
        await turn();
        if (isChanged()) return false;
      }
      post({ save: { original, worked } });
      return true;
    };
    const saved = await ask<SavedFile | undefined>(watched, send, {
      piece: () => {},
      end: (answer) => ("saved" in answer ? answer.saved : null),
    });
    if (saved) return saved;
  }
}

const turn = () => new Promise<void>((next) => setTimeout(next));

async function bytesOf(file: File): Promise<Uint8Array> {
  try {
    return new Uint8Array(await file.arrayBuffer());
  } catch {
    throw new Error(
      `${file.name} could not be read. If another program has it open, or it was moved, close it there or choose it again.`,
    );
  }
}

interface Handling<T> {
  readonly piece: (piece: Extract<Answer, { piece: unknown }>["piece"]) => void;
  /** The result in an answer that brings it, null for any other answer. */
  readonly end: (answer: Answer) => T | null;
}

/** A worker for one task, which ends with it: a stop ends it whatever it is at. Gives nothing where sending was broken off. */
function ask<T>(
  { signal, onProgress }: Watched,
  send: (post: (request: Request) => void) => Promise<boolean>,
  { piece, end }: Handling<T>,
): Promise<T> {
  signal.throwIfAborted();
  const worker = new Worker(/* webpackChunkName: "fileWorker" */ new URL("./fileWorker.ts", import.meta.url));
  return new Promise<T>((resolve, reject) => {
    const stop = () => reject(signal.reason);
    signal.addEventListener("abort", stop, { once: true });
    worker.addEventListener("message", ({ data }: MessageEvent<Answer | Failure>) => {
      if ("failed" in data) reject(failure(data.failed));
      else if ("share" in data) onProgress(data.share);
      else if ("piece" in data) piece(data.piece);
      else {
        const result = end(data);
        if (result !== null) resolve(result);
      }
    });
    worker.addEventListener("error", () => reject(failure({ isRefused: false, message: "" })));
    send((request) => worker.postMessage(request)).then((isSent) => {
      if (!isSent) resolve(undefined as T);
    }, reject);
  }).finally(() => worker.terminate());
}

function failure({ isRefused, message }: Failure["failed"]): Error {
  if (isRefused) return new Error(message);
  return new Error(
    `This file cannot be worked on here${message ? ` (${message})` : ""}. Nothing was changed. Save it in the program that made it as an .xlsx file under a new name, and try that one.`,
  );
}
