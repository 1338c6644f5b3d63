/** A file dropped anywhere on the page. */

export interface Dropped {
  readonly file: File;
  /** Where the browser gives it: the file may then be written again by a press that names it. */
  readonly handle: FileSystemFileHandle | null;
}

interface WithHandle {
  getAsFileSystemHandle?(): Promise<FileSystemHandle | null>;
}

/** Calls with the files that are dropped; while they hang over the page `hint` is shown. */
export function onDrop(hint: HTMLElement, callback: (files: readonly Dropped[]) => void): void {
  const hasFiles = (event: DragEvent) => event.dataTransfer?.types.includes("Files") ?? false;
  const show = (event: DragEvent) => {
    if (!hasFiles(event)) return;
    event.preventDefault();
    event.stopPropagation();
    if (event.dataTransfer) event.dataTransfer.dropEffect = "copy";
    hint.hidden = false;
  };
  const hide = () => {
    hint.hidden = true;
  };
  const options = { capture: true };
  window.addEventListener("dragenter", show, options);
  window.addEventListener("dragover", show, options);
  window.addEventListener("dragleave", (event) => !event.relatedTarget && hide(), options);
  window.addEventListener("dragend", hide, options);
  window.addEventListener(
    "drop",
    (event) => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      event.stopPropagation();
      hide();
      filesOf(event).then(callback);
    },
    options,
  );
}

async function filesOf({ dataTransfer }: DragEvent): Promise<Dropped[]> {
  // All at once: after the event the items are gone.
  const items = [...(dataTransfer?.items ?? [])].filter(({ kind }) => kind === "file");
  const all = items.map(async (item) => {
    const file = item.getAsFile();
    const handle = await ((item as WithHandle).getAsFileSystemHandle?.().catch(() => null) ?? null);
    return file ? [{ file, handle: handle?.kind === "file" ? (handle as FileSystemFileHandle) : null }] : [];
  });
  return (await Promise.all(all)).flat();
}
