/** Works runs out off the page's own thread. */

import { buildRun } from "../runsheet/buildRun";
import type { Beside } from "../runsheet/plan/beside";
import type { Run } from "../runsheet/plan/makeRun";
import type { Settings } from "../runsheet/settings";
import type { Tables } from "../runsheet/tables/tableRows";

export interface PlanRequest {
  readonly id: number;
  readonly tables: Tables;
  readonly settings: Settings;
  readonly beside?: Beside | undefined;
}

/** What comes of a request: the run, or why there is none. */
export type PlanAnswer = { readonly id: number } & ({ readonly run: Run } | { readonly failed: string });

const worker = self as unknown as {
  postMessage(answer: PlanAnswer): void;
  addEventListener(type: "message", listener: (event: MessageEvent<PlanRequest>) => void): void;
};

worker.addEventListener("message", ({ data: { id, tables, settings, beside } }) => {
  try {
    worker.postMessage({ id, run: buildRun(tables, settings, beside) });
  } catch (error) {
    worker.postMessage({ id, failed: error instanceof Error ? error.message : String(error) });
  }
});
