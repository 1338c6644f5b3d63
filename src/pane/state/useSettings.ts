import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import { DamagedSettings, type Host } from "../../host/host";
import { firstKept, type Kept, mergeKept, parsed } from "./kept";

/** The settings, kept in the workbook. `kept` is undefined until they are read, `settings` also while a field is wrong. */
export function useSettings(host: Host, onError: (error: unknown) => void) {
  const [kept, setKept] = useState<Kept>();
  const now = useRef<Kept | undefined>(undefined);
  /** The changes made while the settings of the workbook could not be read; undefined once they are. */
  const missed = useRef<((kept: Kept) => Kept)[] | undefined>([]);

  /** Takes the workbook's settings, with the changes that were made before they could be read. */
  const read = useCallback(async (): Promise<void> => {
    const found = await host.settings().catch((error: unknown) => {
      // What could not be read must not be written over; what is damaged the host has set aside.
      if (!(error instanceof DamagedSettings)) throw error;
      onError(error);
      return null;
    });
    // Another reading may have been faster.
    if (!missed.current) return;
    now.current = missed.current.reduce((before, change) => change(before), mergeKept(found));
    missed.current = undefined;
    setKept(now.current);
  }, [host, onError]);

  useEffect(() => {
    read().catch((error: unknown) => {
      now.current = firstKept();
      setKept(now.current);
      onError(error);
    });
  }, [read, onError]);

  // Work that ends after the pane is closed must not keep its settings in the workbook that is open then.
  useEffect(
    () => () => {
      now.current = undefined;
    },
    [],
  );

  const keep = useCallback(
    (change: (kept: Kept) => Kept) => {
      if (!now.current) return;
      now.current = change(now.current);
      setKept(now.current);
      missed.current?.push(change);
      const ready = missed.current ? read() : Promise.resolve();
      ready.then(() => now.current && host.keepSettings(now.current)).catch(onError);
    },
    [host, read, onError],
  );

  // One object as long as nothing changes: the plan is worked out anew for each other one.
  const { wrong, settings } = useMemo(() => parsed(kept), [kept]);
  return { kept, keep, wrong, settings };
}
