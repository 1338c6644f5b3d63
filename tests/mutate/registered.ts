import { readdirSync } from "node:fs";
import { CellError, type Work } from "../functions/registered";

export { CellError };

/** The functions of the sources in place of those of the built script, which holds no mutants. */
export const registeredFrom = (): ReadonlyMap<string, Work> => functions;

Object.assign(globalThis, {
  CustomFunctions: { Error: CellError, ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" } },
});
const names = readdirSync(new URL("../../src/functions/", import.meta.url)).filter((name) => name.endsWith(".ts"));
const files = await Promise.all(
  names.map((name): Promise<Record<string, Work>> => import(`../../src/functions/${name.replace(".ts", "")}.ts`)),
);
const functions = new Map(files.flatMap((file) => Object.entries(file)));
