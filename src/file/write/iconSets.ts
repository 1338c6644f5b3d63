import type { Condition } from "../book";

/** Sets of the page that files do not know, and those that stand for them there. */
export const FILE_SETS: Readonly<Record<string, string>> = { _5Felling: "5Rating" };

/** Sets that only the younger list may name ([MS-XLSX] 2.3.5; ECMA-376 Part 1, 18.18.42, has the others; from memory). */
const YOUNGER_SETS: ReadonlySet<string> = new Set(["3Stars", "3Triangles", "5Boxes"]);

/** Whether only newer programs have such icons. */
export const areYounger = ({ set, each }: NonNullable<Condition["icons"]>): boolean =>
  each !== undefined || YOUNGER_SETS.has(set);

/** Whether no file has such icons. */
export const areUnknown = ({ set, each = [] }: NonNullable<Condition["icons"]>): boolean =>
  [set, ...each.map((one) => one.set)].some((one) => one in FILE_SETS);
