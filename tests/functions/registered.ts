/** Stands for the host's error class: what a cell shows, and the message beside it. */
export class CellError {
  constructor(
    readonly code: string,
    readonly message = "",
  ) {}
}

export type Work = (...args: unknown[]) => never[][];

/**
 * The functions as a script registers them on a page where this is given too. In a context of its own they would take
 * half as long again: each look at what all pages have, such as Math, takes longer there.
 */
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
  const given = { CustomFunctions, ...page };
  new Function(...Object.keys(given), script)(...Object.values(given));
  return found;
}
