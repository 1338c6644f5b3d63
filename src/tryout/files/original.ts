import type { Remark } from "../../file/book";
import { SAMPLES } from "../../samples/index";
import type { Original } from "../parts";

const sampleOf = (original: Original) =>
  original !== null && "sample" in original ? SAMPLES.find(({ id }) => id === original.sample) : undefined;

/** The bytes of the file that a workbook was made of; null for one that began here, or whose file is no more. */
export async function originalBytes(original: Original): Promise<Uint8Array | null> {
  if (original instanceof Uint8Array) return original;
  const sample = sampleOf(original);
  if (!sample) return null;
  const answer = await fetch(`samples/${sample.file}`).catch(() => null);
  if (!answer?.ok) {
    throw new Error(
      "The file that this sample began as could not be loaded, so nothing was saved. See that this page's address answers, then press Save again: your work is kept here meanwhile.",
    );
  }
  return new Uint8Array(await answer.arrayBuffer());
}

/** What a file lacks where the one that its workbook was made of is no more: a sample of before. */
export function lostWith(original: Original): readonly Remark[] {
  if (original === null || original instanceof Uint8Array || sampleOf(original)) return [];
  return [
    {
      sheet: null,
      what: "charts of the sample that this workbook began as",
      consequence: "That sample is no longer here. The file gets all cells, formulas, tables and looks, but no charts.",
    },
  ];
}
