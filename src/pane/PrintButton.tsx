import { useState } from "react";
import type { Host } from "../host/host";

/** Prints a sheet where the host can; nothing where the spreadsheet program prints itself. */
export function PrintButton({
  host,
  sheet,
  onError,
}: {
  host: Host;
  sheet: string;
  onError: (error: unknown) => void;
}) {
  const [busy, setBusy] = useState(false);
  if (!host.print) return null;
  const print = async () => {
    setBusy(true);
    try {
      await host.print?.(sheet);
    } catch (error) {
      onError(error);
    } finally {
      setBusy(false);
    }
  };
  return (
    <button type="button" className="quiet" disabled={busy} onClick={print}>
      Print or save as PDF
    </button>
  );
}
