import { list } from "./list";
import { wrong } from "./wrong";

/** The one of `allowed` that the text names, whatever its case and the spaces around it. */
export function oneOf<T extends string>(name: string, text: string, allowed: readonly T[]): T {
  // Exactly as it is written here: nearly always, and soon found.
  for (const item of allowed) if (item === text) return item;
  const sought = text.trim().toLowerCase();
  const found = allowed.find((item) => item.toLowerCase() === sought);
  if (found !== undefined) return found;
  throw wrong(name, `"${text.slice(0, 40)}" is not known here; write ${list(allowed)}`);
}
