import { useEffect, useRef, useState } from "react";
import type { Host, Source } from "../../host/host";
import { type RunSheet, runSheetsOf } from "../../runsheet/record/runSheets";

/**
 * The run sheets of the workbook and the one that is chosen: the one that was shown or picked last, else the newest.
 * @param sources what is read anew after every change: the sheets are read with it
 */
export function useRunSheets(
  host: Host,
  sources: readonly Source[] | undefined,
  isWriting: boolean,
  onError: (error: unknown) => void,
) {
  const [sheets, setSheets] = useState<readonly RunSheet[]>([]);
  const [chosen, choose] = useState<string>();
  const [active, setActive] = useState("");
  const shown = useRef<string | undefined>(undefined);
  useEffect(() => {
    if (!sources || isWriting) return;
    let isLast = true;
    Promise.all([host.firstCells(), host.activeSheet()]).then(([cells, active]) => {
      if (!isLast) return;
      const found = runSheetsOf(cells);
      setSheets(found);
      setActive(active);
      // What was picked from the list stays until another run sheet is shown.
      if (active !== shown.current && found.some(({ name }) => name === active)) choose(active);
      shown.current = active;
    }, onError);
    return () => {
      isLast = false;
    };
  }, [host, sources, isWriting, onError]);
  return { sheets, active, sheet: sheets.find(({ name }) => name === chosen) ?? sheets.at(-1), choose };
}
