/** Files on the maker's disk, by the browser's own dialogs where it has them, else by a download. */

const KIND = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

export const ACCEPTED = [".xlsx", ".csv", KIND, "text/csv"];

interface Types {
  readonly types: readonly {
    readonly description: string;
    readonly accept: Readonly<Record<string, readonly string[]>>;
  }[];
}

/** Not in every browser. */
interface Pickers {
  showOpenFilePicker?(options: Types & { readonly multiple: boolean }): Promise<FileSystemFileHandle[]>;
  showSaveFilePicker?(options: Types & { readonly suggestedName: string }): Promise<FileSystemFileHandle>;
}

const pickers = () => window as unknown as Pickers;

const isLeft = (fault: unknown) => fault instanceof DOMException && fault.name === "AbortError";

const WORKBOOK = { description: "Workbook", accept: { [KIND]: [".xlsx"] } };

/** Whether a place for a file can be chosen, and the file be written again later. */
export const canChoosePlace = (): boolean => pickers().showSaveFilePicker !== undefined;

/** A place for a file, which the maker chooses; null when she leaves that. */
export async function choosePlace(name: string): Promise<FileSystemFileHandle | null> {
  try {
    return (
      (await pickers().showSaveFilePicker?.({ suggestedName: `${fileName(name)}.xlsx`, types: [WORKBOOK] })) ?? null
    );
  } catch (fault) {
    if (isLeft(fault)) return null;
    throw fault;
  }
}

/** Whole or not at all: until it is closed the file is as it was. */
export async function writeFile(handle: FileSystemFileHandle, bytes: Uint8Array): Promise<void> {
  let stream: FileSystemWritableFileStream | undefined;
  try {
    stream = await handle.createWritable();
    await stream.write(bytes as Uint8Array<ArrayBuffer>);
    await stream.close();
  } catch (fault) {
    await stream?.abort().catch(() => {});
    const isFull = fault instanceof DOMException && fault.name === "QuotaExceededError";
    const remedy = isFull
      ? "The disk is full: make room on it, or save elsewhere."
      : "If another program has it open, close it there, or save under another name.";
    throw new Error(`${handle.name} could not be written; it is as it was. ${remedy}`);
  }
}

export function download(name: string, bytes: Uint8Array): void {
  const url = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: KIND }));
  const link = document.createElement("a");
  link.href = url;
  link.download = `${fileName(name)}.xlsx`;
  link.click();
  // The browser has taken it by then.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** Without what file names may not hold. */
export const fileName = (name: string): string => name.replace(/[\\/:*?"<>|\p{Cc}]/gu, " ").trim() || "workbook";
