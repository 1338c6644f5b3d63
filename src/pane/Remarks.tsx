import { useEffect, useRef, useState } from "react";
import type { Host, Remarks } from "../host/host";
import { Lines } from "./Lines";

const NOTHING: Remarks = { waiting: undefined, doubts: [] };

/** What the spreadsheet program says by itself. */
export function useRemarks(host: Host): Remarks {
  const [remarks, setRemarks] = useState(NOTHING);
  useEffect(() => host.onRemarks?.(setRemarks), [host]);
  return remarks;
}

/** What may be wrong with the program or the workbook, and what it could not do. */
export function Doubts({ doubts }: { doubts: readonly string[] }) {
  const shown = useRef<HTMLDivElement>(null);
  // One may come of what was pressed at the foot of the pane.
  useEffect(() => {
    if (doubts.length > 0) shown.current?.scrollIntoView({ block: "nearest" });
  }, [doubts]);
  return (
    <div ref={shown} aria-live="polite" className="wrong">
      <Lines lines={doubts} />
    </div>
  );
}

/** What is waited for. */
export function Waiting({ waiting }: { waiting: string | undefined }) {
  return (
    <p aria-live="polite" className="hint">
      {waiting}
    </p>
  );
}
