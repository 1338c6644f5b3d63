/**
 * A stand-in for Excel: enough of its object model for the adapter, over a workbook that can be looked at. It is
 * stricter than Excel where Excel is silent, and can be told to fail.
 */

import { vi } from "vitest";
import { rootOf } from "./kinds";
import { Book, OfficeError, type SheetModel, type Value } from "./model";
import { Queue } from "./remote";

/** Excel on the web takes requests of up to 5 MB. */
const MOST_BYTES = 5 * 1024 * 1024;

/** At which sync to fail, counted from 1, and how much of it is done all the same. */
export interface Failure {
  readonly sync: number;
  readonly done: "nothing" | "half" | "all";
  readonly code?: string;
}

export class StandIn {
  readonly book = new Book();
  /** The bytes of each sync so far. */
  readonly requests: number[] = [];
  failure: Failure | null = null;
  /** What happens elsewhere while a sync is under way, counted from 1. */
  meanwhile: (sync: number) => void = () => {};

  get syncs(): number {
    return this.requests.length;
  }

  /** Puts the stand-in where office.js would be; `vi.unstubAllGlobals` takes it away. */
  install(): this {
    vi.stubGlobal("Excel", { run: (...given: unknown[]) => this.run(...given) });
    return this;
  }

  /** A sheet with these cells from A1, typed in as a user would. */
  sheet(name: string, rows: readonly (readonly (Value | null)[])[] = []): SheetModel {
    const sheet = this.book.add(name);
    for (const [r, row] of rows.entries()) for (const [c, value] of row.entries()) sheet.enter(r, c, value);
    return sheet;
  }

  /** A sheet with a table of these cells from A1, the first row its heading. */
  table(name: string, sheetName: string, rows: readonly (readonly (Value | null)[])[]): SheetModel {
    const sheet = this.sheet(sheetName, rows);
    const area = { sheet, row: 0, column: 0, rows: rows.length, columns: rows[0]?.length ?? 0 };
    this.book.renameTable(this.book.addTable(area), name);
    return sheet;
  }

  /** Tells those who listen to an event. */
  fire(event: string): Promise<void> {
    return this.book.fire(event);
  }

  /** `Excel.run(batch)`, `Excel.run(options, batch)` and `Excel.run(context, batch)`. */
  private async run(...given: unknown[]): Promise<unknown> {
    const batch = given.at(-1) as (context: unknown) => Promise<unknown>;
    const [first] = given;
    const context = given.length > 1 && first instanceof Context ? first : new Context(this);
    const result = await batch(context);
    if (context.queue.length > 0) await context.sync();
    return result;
  }
}

class Context {
  readonly queue = new Queue();
  readonly workbook: object;
  readonly application: object;

  constructor(private readonly standIn: StandIn) {
    ({ workbook: this.workbook, application: this.application } = rootOf(this.queue, standIn.book));
  }

  async sync(): Promise<void> {
    const commands = this.queue.take();
    const bytes = commands.reduce((sum, command) => sum + command.bytes, 0);
    const { requests, failure } = this.standIn;
    const number = requests.push(bytes);
    await Promise.resolve();
    this.standIn.meanwhile(number);
    if (bytes > MOST_BYTES) throw new OfficeError("RequestPayloadSizeLimitExceeded");

    const fails = failure?.sync === number ? failure : null;
    const share = !fails || fails.done === "all" ? 1 : fails.done === "half" ? 0.5 : 0;
    // Excel does the commands one by one and stops at one that fails: what came before stays done.
    let deliveries: ((() => void) | undefined)[];
    try {
      deliveries = commands.slice(0, Math.floor(commands.length * share)).map(({ run }) => run());
    } finally {
      this.standIn.book.isSuspended = false;
    }
    if (fails) throw new OfficeError(fails.code ?? "GeneralException");
    for (const deliver of deliveries) deliver?.();
  }
}
