import { useMemo } from "react";
import type { Book } from "../actions/book";
import { type SeenBeside, seenBeside } from "../burning/seenBeside";
import { WRITING } from "../words/writing";
import type { ReadTables } from "./useTables";

/** What the burn tests show, series by series; read only while somebody looks. */
export function useSeen(
  { kept, settings }: Book,
  read: ReadTables,
  isShown: boolean,
): { readonly seen?: SeenBeside; readonly refused?: string; readonly unit: string } {
  return useMemo(() => {
    const unit = settings?.unit ?? "g";
    if (!isShown || !kept) return { unit };
    return settings ? { unit, seen: seenBeside(read, kept, settings) } : { unit, refused: WRITING.fixSettings };
  }, [isShown, read, kept, settings]);
}

export type SeenState = ReturnType<typeof useSeen>;
