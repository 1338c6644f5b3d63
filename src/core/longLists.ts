/** What a long list would be too many arguments for in one call: Math.min, Math.max, push. */

export const least = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b), Infinity);
export const largest = (values: readonly number[]): number => values.reduce((a, b) => Math.max(a, b), -Infinity);

export function addAll<T>(list: T[], ...more: readonly (readonly T[])[]): void {
  for (const some of more) for (const one of some) list.push(one);
}
