/** How far long work is, with a button that stops it. */

/** Work that is done sooner shows none. */
const PATIENCE = 400;

/** Runs work under a bar in this element; the signal tells it of a press on Stop. */
export async function underProgress<T>(
  element: HTMLElement,
  label: string,
  work: (watched: { signal: AbortSignal; onProgress: (share: number) => void }) => Promise<T>,
): Promise<T> {
  const stopping = new AbortController();
  const text = document.createElement("label");
  const bar = document.createElement("progress");
  text.append(`${label} `, bar);
  const stop = document.createElement("button");
  stop.type = "button";
  stop.textContent = "Stop";
  stop.addEventListener("click", () => stopping.abort());
  const box = document.createElement("p");
  box.className = "files-progress";
  box.append(text, stop);
  const timer = setTimeout(() => element.append(box), PATIENCE);
  try {
    return await work({
      signal: stopping.signal,
      onProgress: (share) => {
        bar.value = share;
      },
    });
  } finally {
    clearTimeout(timer);
    box.remove();
  }
}

/** Whether work ended because it was stopped. */
export const isStopped = (fault: unknown): boolean => fault instanceof DOMException && fault.name === "AbortError";
