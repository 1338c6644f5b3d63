/** Whether an attribute says yes; what it means when it says nothing is given. */
export const isOn = (value: string | undefined, otherwise = false): boolean =>
  value === undefined ? otherwise : value === "1" || value === "true" || value === "on";

/** A number that an attribute gives; undefined when it gives none. */
export function numberIn(value: string | undefined): number | undefined {
  if (value === undefined || value.trim() === "") return undefined;
  const number = Number(value);
  return Number.isFinite(number) ? number : undefined;
}

/** Leaves out what is undefined, so that data says nothing where the file says nothing. */
export function said<T extends object>(
  fields: T,
): { [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & {
  [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
} {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as never;
}
