import { sameName } from "../sameName";
import type { Ingredient } from "../tables/recipes";
import type { ScentNotes } from "../tables/scents";

/** A scent in a pot, by itself or in a blend. */
export interface Oil {
  readonly name: string;
  /** Its places among the ingredients. */
  readonly at: readonly number[];
  /** False while its share is 0, as a recipe may leave it open; a live sheet may still change that. */
  readonly isUsed: boolean;
  /** Its own row in the table of scents. */
  readonly notes: ScentNotes | undefined;
}

/** The scents of a recipe, each once. */
export function oilsOf(ingredients: readonly Ingredient[], notes: (scent: string) => ScentNotes | undefined): Oil[] {
  const oils = new Map<string, Oil>();
  for (const [i, { name, share, isScent }] of ingredients.entries()) {
    if (!isScent) continue;
    const key = sameName(name);
    const { at, isUsed } = oils.get(key) ?? { at: [], isUsed: false };
    oils.set(key, { name, at: [...at, i], isUsed: isUsed || share > 0, notes: notes(key) });
  }
  return [...oils.values()];
}

/** A name short enough for a sentence. */
export const shortName = (name: string): string => (name.length > 60 ? `${name.slice(0, 59)}…` : name);
