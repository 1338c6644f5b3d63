/** Reads and writes files off the page's own thread. */

import type { WorkedOut } from "../../host/univer/file/fromUniver";
import { type Answer, openTask, saveTask } from "./fileTasks";
import { Assembly, type Piece } from "./pieces";

/** What the page asks for: to open a file, or, piece by piece, to save a workbook. */
export type Request =
  | { readonly open: { readonly bytes: Uint8Array; readonly name: string } }
  | { readonly piece: Piece }
  | { readonly save: { readonly original: Uint8Array | null; readonly worked: WorkedOut } };

/** Why something was not done, in words for the maker; nothing where there are none. */
export interface Failure {
  readonly failed: { readonly isRefused: boolean; readonly message: string };
}

const worker = self as unknown as {
  postMessage(message: Answer | Failure): void;
  addEventListener(type: "message", listener: (event: MessageEvent<Request>) => void): void;
};

const assembly = new Assembly();

worker.addEventListener("message", ({ data: request }) => {
  const post = (answer: Answer) => worker.postMessage(answer);
  try {
    if ("piece" in request) assembly.add(request.piece);
    else if ("open" in request) openTask(request.open.bytes, request.open.name, post);
    else saveTask({ ...request.save, data: assembly.whole() }, post);
  } catch (fault) {
    const isRefused = fault instanceof Error && fault.name === "FileRefused";
    worker.postMessage({ failed: { isRefused, message: fault instanceof Error ? fault.message : String(fault) } });
  }
});
