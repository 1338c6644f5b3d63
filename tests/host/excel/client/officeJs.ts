/** Microsoft's own client for Excel as it comes, run in Node: the file is what a pane in Excel loads. */

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { compileFunction } from "node:vm";

/** The programs that run add-ins, each with a client of its own. */
export const PLATFORMS = { web: "excel-web-16.00", windows: "excel-win32-16.01", mac: "excel-mac-16.00" } as const;
export type Platform = keyof typeof PLATFORMS;

/** What Excel sends to its add-ins. */
export interface HostMessage {
  readonly entries: readonly object[];
}
export type Hearing = (message: HostMessage) => unknown;

/** How a request ends: with an answer, or with a number that says why there is none. */
export type Outcome =
  | { readonly status: "succeeded"; readonly value: { readonly data: readonly [number, string[], string] } }
  | { readonly status: "failed"; readonly error: { readonly code: number; readonly message: string } };

/** A request as the client hands it to Excel: its headers stand third, its body follows as a text. */
export type Sent = readonly [custom: unknown, method: string, path: string, headers: string[], body: string];

/** The parts of the client's own world that the tests reach into. */
export interface OfficeJs {
  Excel: { run(...given: unknown[]): Promise<unknown> };
  Office: Record<string, unknown>;
  CustomFunctions: Record<string, unknown>;
  readonly OfficeExtension: {
    readonly ClientObject: { readonly prototype: object };
    readonly ClientRequestContext: { defaultRequestUrlAndHeaders: unknown };
    readonly CommonUtility: { _doApiNotSupportedCheck: boolean };
    readonly CoreConstants: { readonly localDocument: string };
    readonly Error: new () => Error;
    readonly GenericEventRegistration: { s_genericEventRegistrations: object };
  };
  readonly OSF: {
    readonly DDA: {
      RichApi: {
        executeRichApiRequestAsync(sent: Sent, done: (outcome: Outcome) => void): void;
        richApiMessageManager: { register(hearing: Hearing): Promise<void> };
      };
    };
  };
}

const require = createRequire(import.meta.url);
// As they are now: tests may put clocks of their own in their place.
const { setImmediate, clearImmediate } = globalThis;

/** A page's world: what its scripts find and declare. */
export type World = Record<string, unknown>;

/** A page without a browser, for one client. */
export class Page {
  readonly world: World;
  private readonly window: object;

  constructor(search = "") {
    const world: World = browserAt(`https://localhost:3000/pane.html${search}`);
    this.world = world;
    // A page's global names are the properties of its window, also those that a script declares.
    this.window = new Proxy(world, {
      has: (_, name) => typeof name === "string",
      get: (_, name) =>
        typeof name !== "string" ? undefined : name in world ? world[name] : Reflect.get(globalThis, name),
    });
    for (const name of ["window", "self", "top", "parent"]) world[name] = this.window;
  }

  run(script: string, filename: string): void {
    const inWindow = compileFunction(`with (window) {${script}\n}`, ["window"], { filename });
    inWindow.call(this.window, this.window);
  }

  /** Runs a file of Microsoft's. */
  runOffice(name: string): void {
    const file = require.resolve(`@microsoft/office-js/dist/${name}.debug.js`);
    this.run(readFileSync(file, "utf8"), file);
  }
}

/** Loads a platform's client into a page. */
export function loadOfficeJs(platform: Platform, page = new Page()): OfficeJs {
  page.runOffice(PLATFORMS[platform]);
  // It adds to what all scripts share: there it is not to be met by chance.
  for (const shared of [Error.prototype, Function.prototype]) {
    for (const name of Object.keys(shared)) Object.defineProperty(shared, name, { enumerable: false });
  }
  const office = page.world as unknown as OfficeJs;
  // Off as it comes, so that only Excel itself refuses what it is too old for.
  office.OfficeExtension.CommonUtility._doApiNotSupportedCheck = true;
  return office;
}

/** Of a browser what the client asks for while it loads. Its waits are over at once. */
function browserAt(href: string): World {
  const { search, hash, protocol, host, hostname, pathname } = new URL(href);
  const scripts = [{ src: "https://localhost:3000/office/office.debug.js" }];
  const asked: { src?: string }[] = [];
  return {
    navigator: { userAgent: "", appName: "" },
    location: { href, search, hash, protocol, host, hostname, pathname },
    history: {},
    /** The scripts that were asked for. */
    asked,
    document: {
      URL: href,
      cookie: "",
      readyState: "complete",
      addEventListener() {},
      getElementById: () => null,
      getElementsByTagName: (name: string) =>
        name === "script" ? scripts : [{ appendChild: (child: object) => asked.push(child) }],
      createElement: () => ({ setAttribute() {} }),
    },
    addEventListener() {},
    fetch: undefined,
    localStorage: undefined,
    sessionStorage: undefined,
    setTimeout: (work: (...args: unknown[]) => void, _: number, ...args: unknown[]) => setImmediate(work, ...args),
    clearTimeout: (wait: NodeJS.Immediate) => clearImmediate(wait),
  };
}
