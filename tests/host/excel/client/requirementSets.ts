import { readFileSync } from "node:fs";
import { join } from "node:path";

/** Whether an Excel knows a set of calls in a version. */
export type Knows = (set: string, version: string | number) => boolean;

const manifest = readFileSync(join(import.meta.dirname, "../../../../manifest.xml"), "utf8");

/** The sets of calls that the manifest asks for, each with its least version. */
export const REQUIRED: ReadonlyMap<string, string> = new Map(
  [...manifest.matchAll(/<Set Name="(\w+)" MinVersion="([\d.]+)"/g)].map(([, name = "", version = ""]) => [
    name,
    version,
  ]),
);

/** An Excel that knows just these sets up to these versions: by what the manifest asks for, the oldest that loads the add-in. */
export function knowing(sets: ReadonlyMap<string, string>): Knows {
  return (set, version) => {
    const most = sets.get(set);
    return most !== undefined && compare(most, String(version)) >= 0;
  };
}

/** An Excel of today. */
export const everything: Knows = () => true;

/** What the adapter uses of later sets where Excel knows them, and does without elsewhere. */
export const BEYOND_REQUIRED = [
  "Table.resize",
  "WorksheetCollection.onColumnSorted",
  "WorksheetCollection.onNameChanged",
  "WorksheetCollection.onRowHiddenChanged",
  "WorksheetCollection.onRowSorted",
];

function compare(one: string, other: string): number {
  const [major = 0, minor = 0] = one.split(".").map(Number);
  const [otherMajor = 0, otherMinor = 0] = other.split(".").map(Number);
  return major - otherMajor || minor - otherMinor;
}
