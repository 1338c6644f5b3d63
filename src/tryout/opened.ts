import type { Spreadsheet } from "../host/univer/start";
import type { Keep, NewWorkbook, OpenWorkbook } from "./parts";

/** What the page does around the workbook that is open. */
export interface Around {
  /** Before another one is shown. */
  leave(): void;
  /** Once one is shown. */
  show(workbook: OpenWorkbook): void;
}

/** The workbook that is open: which one it is, and how another one takes its place. */
export class Opened {
  #workbook: OpenWorkbook | null = null;
  /** The last opening that was asked for: one begins only when those before it have ended. */
  #opening: Promise<unknown> = Promise.resolve();

  constructor(
    private readonly keep: Keep,
    private readonly spreadsheet: Spreadsheet,
    private readonly around: Around,
  ) {}

  /** Follows the workbook that the spreadsheet shows already. */
  started(workbook: OpenWorkbook): void {
    this.#workbook = workbook;
    this.keep.start(workbook, this.spreadsheet);
    this.around.show(workbook);
  }

  /** It with all that was done in it so far, a cell that is being typed in included. Its data is only to be read. */
  async current(): Promise<OpenWorkbook | null> {
    if (!this.#workbook) return null;
    await this.spreadsheet.finishTyping();
    return { ...this.#workbook, data: this.spreadsheet.snapshot() };
  }

  /** Shows a workbook in its place. When that fails, it is there as it was. */
  open(workbook: OpenWorkbook): Promise<void> {
    return this.#inTurn(() => this.#replace(workbook));
  }

  /** Shows a workbook that is kept from now on as one of its own. */
  openNew(workbook: NewWorkbook): Promise<void> {
    return this.#inTurn(async () => this.#replace(await this.keep.create(workbook)));
  }

  #inTurn(open: () => Promise<void>): Promise<void> {
    const turn = this.#opening.then(open);
    this.#opening = turn.catch(() => undefined);
    return turn;
  }

  async #replace(workbook: OpenWorkbook): Promise<void> {
    const before = await this.current();
    if (before && !this.keep.mayLeave()) {
      throw new Error(`What you did in ${before.name} is not kept and would be lost. Save it as a file first.`);
    }
    await this.keep.stop();
    this.around.leave();
    try {
      this.spreadsheet.open(workbook.data);
      this.started(workbook);
    } catch (fault) {
      if (before) {
        const again = await this.keep.open(before.id).catch(() => before);
        this.spreadsheet.open(again.data);
        this.started(again);
      }
      throw fault;
    }
  }

  renamed(name: string): void {
    if (this.#workbook) this.#workbook = { ...this.#workbook, name };
  }

  /** Notes what file it is now. */
  async saved(id: string, file: Parameters<Keep["saved"]>[1]): Promise<void> {
    if (this.#workbook?.id === id) this.#workbook = { ...this.#workbook, ...file };
    await this.keep.saved(id, file);
  }
}
