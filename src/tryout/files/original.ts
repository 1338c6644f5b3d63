import { SAMPLES } from "../../samples/index";
import type { Original } from "../parts";

/** The bytes of the file that a workbook was made of; null for one that began here. */
export async function originalBytes(original: Original): Promise<Uint8Array | null> {
  if (original === null || original instanceof Uint8Array) return original;
  const file = SAMPLES.find(({ id }) => id === original.sample)?.file;
  const answer = file ? await fetch(`samples/${file}`) : null;
  if (!answer?.ok) {
    throw new Error("The file of this sample is not beside the page, so it cannot be saved. Load the page again.");
  }
  return new Uint8Array(await answer.arrayBuffer());
}
