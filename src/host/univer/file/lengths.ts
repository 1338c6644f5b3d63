/** Points and characters of a file as pixels, and back. */

/** A character of the standard font; what is between them is in a file's widths already. */
const CHARACTER = 7;
const POINT = 4 / 3;

/** What Excel gives columns and rows that say nothing. */
export const OWN = { width: 64, height: 20 };

export const widthPixels = (characters: number): number => Math.round(characters * CHARACTER);
export const heightPixels = (points: number): number => Math.round(points * POINT);

export const widthOf = (pixels: number): number => Math.round((pixels / CHARACTER) * 1e4) / 1e4;
export const heightOf = (pixels: number): number => Math.round((pixels / POINT) * 1e4) / 1e4;

/** How the lengths of a file were said there. Those next to it may have come to the same pixels: its own place goes first. */
export class LengthMemory {
  readonly #places = new Map<number, { readonly said: number; readonly pixels: number }>();
  readonly #pixels = new Map<number, number>();

  note(place: number, said: number, pixels: number): void {
    this.#places.set(place, { said, pixels });
    if (!this.#pixels.has(pixels)) this.#pixels.set(pixels, said);
  }

  at(place: number, pixels: number): number | undefined {
    const here = this.#places.get(place);
    return here?.pixels === pixels ? here.said : this.#pixels.get(pixels);
  }
}
