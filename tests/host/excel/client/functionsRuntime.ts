import { type Hearing, loadOfficeJs, type OfficeJs, type Outcome, Page, type Platform, type Sent } from "./officeJs";
import type { Request } from "./requests";
import type { Knows } from "./requirementSets";

/** What Excel is told of a call: what came of it, or in its stead that it failed as a whole, and how. */
export interface Answer {
  readonly value: unknown;
  readonly isFailed: boolean;
}

/** A call of a function: its id and its arguments as Excel passes them. */
export type Call = readonly [id: string, ...args: unknown[]];

/** What a page in Excel finds in its address, by platform; 2 means that it holds functions. */
const HOST: Readonly<Record<Platform, string>> = {
  web: "Excel$Web$16.01$en-US$$$$2",
  windows: "Excel$Win32$16.01$en-US$$$$2",
  mac: "Excel$Mac$16.00$en-US$$$$2",
};
const CALL = { messageCategory: 1, messageType: 1000 } as const;
/** That arguments may be errors. */
const MAY_BE_ERRORS = 4;
/** That arguments that are objects are rich values, each as a text. */
const MAY_BE_RICH = 8;

/** A page in Excel whose functions are called as Excel calls them, through Microsoft's own runtime for functions. */
export class FunctionsRuntime {
  readonly office: OfficeJs;
  /** The scripts that office.js asked for, of which the client is one. */
  readonly asked: readonly (string | undefined)[];
  /** The bytes of each request that brought answers. */
  readonly sent: number[] = [];
  private readonly listening: Promise<Hearing>;
  private readonly waiting = new Map<number, (answer: Answer) => void>();
  private calls = 0;

  /** @param script the functions, as the page loads them */
  constructor(platform: Platform, script: string, knows: Knows) {
    const page = new Page(`?_host_Info=${HOST[platform]}`);
    // It asks for scripts, and would wait for them.
    const { setTimeout } = page.world;
    page.world.setTimeout = () => 0;
    page.runOffice("office");
    page.world.setTimeout = setTimeout;
    this.asked = (page.world.asked as { src?: string }[]).map(({ src }) => src);
    page.run(script, "functions.js");
    // Excel around the page is missing: so it is said here that it is ready, and what it knows.
    const onReady = (then: (info: object) => void) => then({ host: "Excel" });
    Object.assign(page.world.Office as object, { onReady });
    this.office = loadOfficeJs(platform, page);
    const context = { value: { requirements: { isSetSupported: knows } } };
    this.office.Office = Object.create(this.office.Office, { context });
    this.listening = new Promise((listen) => {
      Object.assign(this.office.OSF.DDA.RichApi, {
        executeRichApiRequestAsync: (sent: Sent, done: (outcome: Outcome) => void) => done(this.answer(sent)),
        richApiMessageManager: { register: async (hear: Hearing) => listen(hear) },
      });
    });
  }

  async call(...call: Call): Promise<Answer> {
    const [answer] = await this.callAll([call]);
    return answer as Answer;
  }

  /** Makes calls in one message; waits for all their answers. */
  async callAll(calls: readonly Call[], isRich = false): Promise<Answer[]> {
    const hear = await this.listening;
    const flags = MAY_BE_ERRORS | (isRich ? MAY_BE_RICH : 0);
    const numbered = calls.map(([id, ...args]) => ({ number: ++this.calls, id, args }));
    const answers = numbered.map(({ number }) => new Promise<Answer>((done) => this.waiting.set(number, done)));
    hear({ entries: numbered.map(({ number, id, args }) => ({ ...CALL, message: [number, id, args, "", flags] })) });
    return Promise.all(answers);
  }

  /** Takes the answers in a request. */
  private answer([, , , , body]: Sent): Outcome {
    const { Actions } = JSON.parse(body) as Request;
    for (const { Name, ArgumentInfo } of Actions) {
      if (!/^SetInvocation(Array)?Results$/.test(Name)) continue;
      this.sent.push(Buffer.byteLength(body));
      const [answers] = (ArgumentInfo?.Arguments ?? []) as (Result | ArrayResult)[][];
      for (const one of answers ?? []) this.take(one);
    }
    const results = Actions.map(({ Id }) => ({ ActionId: Id, Value: {} }));
    return { status: "succeeded", value: { data: [200, [], JSON.stringify({ Results: results })] } };
  }

  private take(one: Result | ArrayResult): void {
    const [id, isGood, value] = "id" in one ? ([one.id, !one.failed, one.value] as const) : one;
    this.waiting.get(id)?.({ value, isFailed: !isGood });
    this.waiting.delete(id);
  }
}

/** An answer as an older runtime sends it, and as a newer one does. */
type Result = { readonly id: number; readonly value: unknown; readonly failed?: boolean };
type ArrayResult = readonly [id: number, isGood: boolean, value: unknown, ...more: unknown[]];
