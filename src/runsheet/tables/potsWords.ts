/** Pots of a run as tables hold them, and as they are read: `Cedar: pot 1 of 2; Cedar: pot 2 of 2`. */
export const potsText = (pots: readonly { readonly id: string }[]): string => pots.map(({ id }) => id).join("; ");
export const potsIn = (text: string): string[] => text.split(";").flatMap((id) => id.trim() || []);

/** The pots of a run that took of a lot: all of its sheet, or those that are named; undefined where nobody said. */
export type MovePots = "all" | readonly string[] | undefined;

/** The same in the note of a move, after what else stands in it. */
export function potsNote(pots: MovePots): string {
  if (pots === undefined || pots.length === 0) return "";
  return pots === "all" ? "all pots" : `pots: ${pots.join("; ")}`;
}

/** The pots that a note names. */
export function potsInNote(note: string): MovePots {
  const named = /(?:^|[\s,;.])pots: (.+)$/i.exec(note)?.[1];
  if (named !== undefined) return potsIn(named);
  return /(?:^|[\s,;.])all pots$/i.test(note) ? "all" : undefined;
}
