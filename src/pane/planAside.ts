import { type Planner, planHere } from "./planner";
import type { PlanAnswer, PlanRequest } from "./planWorker";

/** Works runs out in a worker, so that the page answers all the while; where none is to be had, on the page's thread. */
export function planAside(): Planner {
  /** What waits for an answer, by its number; told undefined when none will come. */
  const waiting = new Map<number, (answer: PlanAnswer | undefined) => void>();
  let count = 0;
  let worker: Worker | null | undefined;

  const giveUp = (): void => {
    worker?.terminate();
    worker = null;
    for (const tell of waiting.values()) tell(undefined);
    waiting.clear();
  };
  const start = (): Worker => {
    const started = new Worker(/* webpackChunkName: "planWorker" */ new URL("./planWorker.ts", import.meta.url));
    started.addEventListener("message", ({ data }: MessageEvent<PlanAnswer>) => {
      waiting.get(data.id)?.(data);
      waiting.delete(data.id);
    });
    started.addEventListener("error", giveUp);
    return started;
  };
  const ask = (request: Omit<PlanRequest, "id">): Promise<PlanAnswer | undefined> =>
    new Promise((tell) => {
      const id = ++count;
      waiting.set(id, tell);
      try {
        if (worker === undefined) worker = start();
        if (worker === null) giveUp();
        else worker.postMessage({ id, ...request });
      } catch {
        giveUp();
      }
    });

  return async (tables, settings, beside) => {
    const answer = await ask({ tables, settings, beside });
    if (!answer) return planHere(tables, settings, beside);
    if ("failed" in answer) throw new Error(answer.failed);
    return answer.run;
  };
}
