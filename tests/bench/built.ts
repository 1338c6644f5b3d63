import { readFileSync } from "node:fs";
import { type Bundle, loadBundle, type SheetFunction } from "../../src/engine/bundle";
import { dist } from "../dist";

/** The built files. */
export const bundle: Bundle = {
  script: readFileSync(new URL("functions.js", dist), "utf8"),
  metadata: readFileSync(new URL("functions.json", dist), "utf8"),
};

const byName = new Map(loadBundle(bundle).map((one): [string, SheetFunction] => [one.name, one]));

/** Calls a function as Excel does: what is left out is null, and an invocation stands last. */
export function caller(name: string): (...given: unknown[]) => unknown {
  const { call, parameters } = byName.get(name) as SheetFunction;
  return (...given) => call(...parameters.map((_, i) => given[i] ?? null), { functionName: name });
}
