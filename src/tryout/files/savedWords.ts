/** What is said of a saved file: of the functions in it once for each workbook, as long as the page is open. */
export class SavedWords {
  readonly #told = new Set<string>();

  of(workbook: string, file: string, callsOurs: boolean): string {
    const saved = `Saved ${file}.`;
    if (!callsOurs || this.#told.has(workbook)) return saved;
    this.#told.add(workbook);
    return `${saved} For somebody without the add-in: Excel shows what its POUR functions gave here, LibreOffice shows #NAME?.`;
  }
}
