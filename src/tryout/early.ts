/** What the page waits for, asked for before the rest of its script begins: it comes while that one is at work. */

import type { Bundle } from "../engine/bundle";
import { Store } from "./keep/store";

export const store = new Store();
void store.list().catch(() => undefined);

export const bundle: Promise<Bundle> = Promise.all([textOf("functions.js"), textOf("functions.json")]).then(
  ([script, metadata]) => ({ script, metadata }),
);

async function textOf(file: string): Promise<string> {
  const answer = await fetch(file);
  if (!answer.ok) throw new Error(`${file} is missing beside this page (${answer.status})`);
  return answer.text();
}
