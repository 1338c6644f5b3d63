import { isSaid } from "../isSaid";

/** Where in a result a number stands that is none, or a text that no person reads; undefined where nowhere. */
export function badIn(value: unknown, path = ""): string | undefined {
  if (typeof value === "number") return Number.isFinite(value) ? undefined : `${path} is ${value}`;
  if (typeof value === "string") return isSaid(value) ? undefined : `${path} says "${value}"`;
  if (typeof value !== "object" || value === null) return undefined;
  const entries = value instanceof Map || Array.isArray(value) ? value.entries() : Object.entries(value);
  for (const [key, one] of entries) {
    const bad = badIn(one, `${path}.${String(key)}`);
    if (bad) return bad;
  }
  return undefined;
}
