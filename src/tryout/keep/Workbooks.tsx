/** The list of the maker's workbooks. */

import { useCallback, useEffect, useRef, useState } from "react";
import type { Entry, Library } from "./library";
import { WorkbookEntry } from "./WorkbookEntry";

type Offered = Pick<Library, keyof Library>;

export interface Doing {
  /** Does something with a workbook, says what came of it, and shows the list as it is then. */
  readonly run: (id: string, work: () => Promise<string>) => Promise<void>;
  /** The same, and leaves the list for the workbook that is open then. */
  readonly leave: (work: () => Promise<void>) => Promise<void>;
  readonly library: Offered;
}

export function Workbooks({ library, close }: { library: Offered; close: () => void }) {
  const [entries, setEntries] = useState<readonly Entry[] | null>(null);
  const [said, setSaid] = useState("");
  const [wrong, setWrong] = useState("");
  const isBusy = useRef(false);
  const list = useRef<HTMLDivElement>(null);
  /** The workbook that something was done with last. */
  const last = useRef("");

  const read = useCallback(async () => setEntries(await library.entries()), [library]);
  const once = useCallback(async (work: () => Promise<void>) => {
    if (isBusy.current) return;
    isBusy.current = true;
    setWrong("");
    setSaid("");
    try {
      await work();
    } catch (fault) {
      setWrong(fault instanceof Error ? fault.message : String(fault));
    } finally {
      isBusy.current = false;
    }
  }, []);
  useEffect(() => void once(read), [once, read]);

  // The button that was pressed may be gone now.
  useEffect(() => {
    if (!last.current || !entries || list.current?.contains(document.activeElement)) return;
    list.current?.querySelector<HTMLElement>(`[data-workbook="${last.current}"]`)?.focus();
  }, [entries]);

  const run: Doing["run"] = (id, work) =>
    once(async () => {
      const words = await work();
      last.current = id;
      await read();
      setSaid(words);
    });
  const leave: Doing["leave"] = (work) =>
    once(async () => {
      await work();
      close();
    });
  const remove = (entry: Entry) =>
    run(entry.id, async () => {
      await library.remove(entry);
      // The line with the way back says so, and is read out as the keyboard goes there.
      return "";
    });
  const putBack = ({ id, name }: Entry) =>
    run(id, async () => {
      await library.putBack(id);
      return `${name} is back.`;
    });

  return (
    <div ref={list}>
      <p role="status">{said}</p>
      {wrong && (
        <p role="alert" className="wrong">
          {wrong}
        </p>
      )}
      {entries?.length === 0 && (
        <p>No workbook is kept yet. What you write is kept here by itself, in this browser on this machine.</p>
      )}
      {library.removed.map((entry) => (
        <p key={entry.id} className="removed">
          <span>{entry.name} is removed.</span>
          <button
            type="button"
            data-workbook={entry.id}
            aria-label={`Put back: ${entry.name}`}
            onClick={() => void putBack(entry)}
          >
            Put back
          </button>
        </p>
      ))}
      <ul>
        {entries?.map((entry) => (
          <WorkbookEntry key={entry.id} entry={entry} doing={{ run, leave, library }} remove={() => remove(entry)} />
        ))}
      </ul>
    </div>
  );
}
