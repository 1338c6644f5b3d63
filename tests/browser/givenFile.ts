import type { TryoutPage } from "./page";

/** Gives the page a file to open, as its file dialog does. */
export const give = (tryout: TryoutPage, name: string, buffer: Buffer) =>
  tryout.page.getByLabel("Workbook file").setInputFiles({ name, mimeType: "", buffer });
