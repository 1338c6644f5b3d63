/**
 * A stand-in for Excel: Microsoft's own client for add-ins, with a workbook behind it that can be looked at. It is
 * stricter than Excel where Excel is silent, and can be told to fail.
 */

import { expect, onTestFinished, vi } from "vitest";
import { ExcelHost } from "../../../src/host/excel/adapter";
import { clientFor } from "./client/connected";
import type { OfficeJs, Outcome, Platform, Sent } from "./client/officeJs";
import { ActionFailed, isCleaning, type Request, Requests } from "./client/requests";
import { BEYOND_REQUIRED, type Knows, knowing, REQUIRED } from "./client/requirementSets";
import { servicesOf } from "./kinds";
import { Book, OfficeError, type SheetModel, type Value } from "./model";

/** Excel on the web takes requests of up to 5 MB, and gives no longer answers. */
const MOST_BYTES = 5 * 1024 * 1024;
/** How the client is told so. */
const TOO_LONG = { request: 5103, answer: 5104 } as const;

/** At which sync to fail, counted from 1, and how much of it is done all the same. */
export interface Failure {
  readonly sync: number;
  readonly done: "nothing" | "half" | "all";
  readonly code?: string;
}

/** Which Excel it stands for. */
export interface Version {
  readonly platform?: Platform;
  /** By itself the oldest that loads the add-in. */
  readonly knows?: Knows;
}

/** Makes the page a new one: what other tests had functions do in it is not known there. */
function forgetRuns(): void {
  Reflect.deleteProperty(globalThis, Symbol.for("pourwright functions"));
}

/** A host for several tests, that knows of no functions which ran before them. */
export function newHost(): ExcelHost {
  forgetRuns();
  return new ExcelHost();
}

export class StandIn {
  readonly book = new Book();
  /** The bytes of each request so far. */
  readonly requests: number[] = [];
  /** What the client or the stand-in would not have: a test in which anything of it is left fails. */
  readonly faults: string[] = [];
  /** The calls for which this Excel is too old. */
  readonly lacking = new Set<string>();
  failure: Failure | null = null;
  /** What happens elsewhere while a sync is under way, counted from 1. */
  meanwhile: (sync: number) => void = () => {};
  private readonly done = new Requests(this.book, servicesOf(this.book));
  private readonly platform: Platform;
  private readonly knows: Knows;

  constructor({ platform = "web", knows = knowing(REQUIRED) }: Version = {}) {
    this.platform = platform;
    this.knows = knows;
  }

  get syncs(): number {
    return this.requests.length;
  }

  /** Puts the client where it would be in Excel; `vi.unstubAllGlobals` takes it away. */
  install(): this {
    const { page, forget } = this.connect();
    for (const [name, value] of Object.entries(page)) vi.stubGlobal(name, value);
    onTestFinished(() => {
      forget();
      expect(this.faults, "what the client refused").toEqual([]);
    });
    return this;
  }

  /** What a page has in Excel, and how it is left. */
  connect(): { readonly page: object; readonly forget: () => void } {
    forgetRuns();
    const client = clientFor(this.platform);
    const { office } = client;
    client.connect(this);
    this.book.onEvent = (event) => client.tell(event);
    const page = {
      Excel: { ...office.Excel, run: (...given: unknown[]) => this.run(office, given) },
      Office: office.Office,
    };
    return { page, forget: () => client.forget(this) };
  }

  /** Whether this Excel knows a set of calls. */
  isSetSupported(set: string, version: string | number): boolean {
    return this.knows(set, version);
  }

  complain(about: string): void {
    this.faults.push(about);
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

  /** The client's `Excel.run`: what the client itself refuses is a fault, whatever becomes of it. */
  private async run({ Excel, OfficeExtension }: OfficeJs, given: readonly unknown[]): Promise<unknown> {
    try {
      return await Excel.run(...given);
    } catch (error) {
      const isOfClient = error instanceof OfficeExtension.Error && !this.isForeseen(error);
      if (isOfClient || error instanceof TypeError || error instanceof ReferenceError) this.faults.push(String(error));
      throw error;
    }
  }

  /** Whether an error came as an answer, or says that Excel is too old for what the adapter can do without. */
  private isForeseen(error: Error): boolean {
    const { code, debugInfo } = error as { code?: string; debugInfo?: { errorLocation?: string } };
    const place = debugInfo?.errorLocation ?? "";
    if (place === ANSWERED || code !== "ApiNotFound") return place === ANSWERED;
    this.lacking.add(place);
    return BEYOND_REQUIRED.includes(place);
  }

  /** Answers a request of the client. */
  async answer(sent: Sent): Promise<Outcome> {
    const request = JSON.parse(sent[4]) as Request;
    const bytes = Buffer.byteLength(sent[4]);
    if (isCleaning(request)) return answered({ Results: [] });
    const number = this.requests.push(bytes);
    await Promise.resolve();
    this.meanwhile(number);
    if (bytes > MOST_BYTES) return this.tooLong("request", bytes);

    const fails = this.failure?.sync === number ? this.failure : null;
    const share = !fails || fails.done === "all" ? 1 : fails.done === "half" ? 0.5 : 0;
    try {
      const results = this.done.run(request, share);
      if (fails) throw new OfficeError(fails.code ?? "GeneralException");
      const outcome = answered({ Results: results });
      const length = Buffer.byteLength(outcome.value.data[2]);
      return length > MOST_BYTES ? this.tooLong("answer", length) : outcome;
    } catch (error) {
      return answered({ Error: this.refusal(error) });
    } finally {
      this.book.isSuspended = false;
    }
  }

  private tooLong(what: keyof typeof TOO_LONG, bytes: number): Outcome {
    this.faults.push(`A ${what} of ${bytes} bytes is too long.`);
    return { status: "failed", error: { code: TOO_LONG[what], message: `The ${what} is too long.` } };
  }

  /** An error as Excel words it. What the stand-in does not know is a fault. */
  private refusal(error: unknown): object {
    const cause = error instanceof ActionFailed ? error.cause : error;
    const index = error instanceof ActionFailed ? error.index : -1;
    const code = cause instanceof OfficeError ? cause.code : "InvalidArgument";
    if (!(cause instanceof OfficeError)) this.faults.push(String(cause));
    const message = cause instanceof Error ? cause.message : String(cause);
    return { Code: code, Message: message, Location: ANSWERED, ActionIndex: index, HttpStatusCode: 400 };
  }
}

/** Where errors happened that came as an answer. */
const ANSWERED = "the workbook";

const answered = (body: object): Outcome & { status: "succeeded" } => ({
  status: "succeeded",
  value: { data: [200, [], JSON.stringify(body)] },
});
