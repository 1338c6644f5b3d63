import { useEffect, useState } from "react";
import type { Host, Source } from "../host/host";
import { type RunSheet, runSheetsOf } from "../runsheet/runSheets";

/**
 * The run sheets of the workbook and the one that is chosen: the one that was picked last, else the newest.
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
  useEffect(() => {
    if (!sources || isWriting) return;
    let isLast = true;
    host.firstCells().then((cells) => {
      if (isLast) setSheets(runSheetsOf(cells));
    }, onError);
    return () => {
      isLast = false;
    };
  }, [host, sources, isWriting, onError]);
  return { sheets, sheet: sheets.find(({ name }) => name === chosen) ?? sheets.at(-1), choose };
}
