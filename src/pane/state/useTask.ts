import { useCallback, useRef, useState } from "react";
import type { Work } from "../../host/host";
import { WRITING } from "../words/writing";

/** What a task is handed: it is told of a stop, and tells how far it is. */
export type Task = Required<Work>;

/** The task under way. */
export interface Running {
  /** What is being done, in words. */
  readonly what: string;
  /** The share that is done, 0 to 1, once it says so: then it can be watched and stopped. */
  readonly share?: number;
  readonly stop: () => void;
}

/** What is told at the foot of the pane. */
export interface Message {
  readonly text: string;
  readonly bad: boolean;
}

/** Does a task and shows the words it gives, or what went wrong; nothing while another one is under way. */
export type RunTask = (what: string, work: (task: Task) => Promise<string | undefined>) => Promise<void>;

/** The one place where the pane's work is done: one task at a time, each of which can be stopped. */
export function useTask() {
  const [running, setRunning] = useState<Running>();
  const [message, setMessage] = useState<Message>();
  // Two presses may come before the first one is drawn.
  const isBusy = useRef(false);

  const onError = useCallback((error: unknown) => {
    setMessage({ text: error instanceof Error ? error.message : String(error), bad: true });
  }, []);

  const run: RunTask = useCallback(
    async (what, work) => {
      if (isBusy.current) return;
      isBusy.current = true;
      const controller = new AbortController();
      const { signal } = controller;
      const now = { what, stop: () => controller.abort() };
      setRunning(now);
      setMessage(undefined);
      try {
        const words = await work({ signal, onProgress: (share) => setRunning({ ...now, share }) });
        if (words !== undefined) setMessage({ text: words, bad: false });
      } catch (error) {
        if (signal.aborted && error === signal.reason) setMessage({ text: WRITING.stopped, bad: false });
        else onError(error);
      } finally {
        isBusy.current = false;
        setRunning(undefined);
      }
    },
    [onError],
  );

  const forget = useCallback(() => setMessage(undefined), []);

  return { running, message, run, forget, onError };
}
