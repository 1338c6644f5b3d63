import { createContext, runInContext } from "node:vm";

/** Stands for the host's error class: what a cell shows, and the message beside it. */
export class CellError {
  constructor(
    readonly code: string,
    readonly message = "",
  ) {}
}

export type Work = (...args: unknown[]) => never[][];

/** The functions as a script registers them on a page that holds nothing else but what is given. */
export function registeredFrom(script: string, page: object): ReadonlyMap<string, Work> {
  const found = new Map<string, Work>();
  const CustomFunctions = {
    associate: (id: string, work: Work) => {
      if (found.has(id)) throw new Error(`${id} is registered twice`);
      found.set(id, work);
    },
    Error: CellError,
    ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" },
  };
  runInContext(script, createContext({ CustomFunctions, ...page }));
  return found;
}
