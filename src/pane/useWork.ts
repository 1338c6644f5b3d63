import { useCallback, useRef, useState } from "react";

/** Does one thing at a time: what is pressed while work is under way does nothing. */
export function useWork(onStart: () => void, onError: (error: unknown) => void) {
  const [busy, setBusy] = useState(false);
  // Two presses may come before the first one is drawn.
  const isBusy = useRef(false);
  const run = useCallback(
    async (work: () => Promise<void>): Promise<void> => {
      if (isBusy.current) return;
      isBusy.current = true;
      setBusy(true);
      onStart();
      try {
        await work();
      } catch (error) {
        onError(error);
      } finally {
        isBusy.current = false;
        setBusy(false);
      }
    },
    [onStart, onError],
  );
  return { busy, run };
}
