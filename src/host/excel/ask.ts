import { sentence } from "./sentences";

/** Runs a batch; what goes wrong becomes a sentence. */
export async function ask<T>(failed: string, batch: (context: Excel.RequestContext) => Promise<T>): Promise<T> {
  try {
    return await Excel.run(batch);
  } catch (error) {
    throw sentence(failed, error);
  }
}
