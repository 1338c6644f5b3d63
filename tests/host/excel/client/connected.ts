import { EVENTS } from "./events";
import { type Hearing, loadOfficeJs, type OfficeJs, type Outcome, type Platform, type Sent } from "./officeJs";
import { watchProperties } from "./watched";

/** The other end of the client: what answers it. */
export interface Answering {
  answer(sent: Sent): Promise<Outcome>;
  isSetSupported(set: string, version: string | number): boolean;
  /** Where the client is used wrongly. */
  complain(about: string): void;
}

/** Says which stand-in a request is for: one that comes late is not the next test's. */
const HEADER = "For";

/** A platform's client. It is loaded once and serves one stand-in after the other. */
class Connected {
  readonly office: OfficeJs;
  private readonly answering = new Map<string, Answering>();
  private current: Answering | undefined;
  private hearing: Hearing[] = [];
  private count = 0;

  constructor(platform: Platform) {
    const office = loadOfficeJs(platform);
    this.office = office;
    const requirements = {
      isSetSupported: (set: string, version: string | number) => this.current?.isSetSupported(set, version) ?? false,
    };
    // What stands in the page before the client comes, from office.js itself.
    office.Office = Object.create(office.Office, {
      context: { value: { requirements } },
      HostType: { value: { Excel: "Excel" } },
      onReady: { value: async () => ({ host: "Excel", platform: null }) },
    });
    Object.assign(office.OSF.DDA.RichApi, {
      executeRichApiRequestAsync: (sent: Sent, done: (outcome: Outcome) => void) => {
        const headers = sent[3];
        const answering = this.answering.get(headers[headers.indexOf(HEADER) + 1] ?? "");
        void answering?.answer(sent).then(done);
      },
      richApiMessageManager: {
        register: async (hearing: Hearing) => {
          this.hearing.push(hearing);
        },
      },
    });
    watchProperties(office, (about) => this.current?.complain(about));
  }

  /** From now on what is begun goes to this one. */
  connect(answering: Answering): void {
    const { ClientRequestContext, CoreConstants, GenericEventRegistration } = this.office.OfficeExtension;
    const id = String(++this.count);
    this.answering.set(id, answering);
    this.current = answering;
    this.hearing = [];
    GenericEventRegistration.s_genericEventRegistrations = {};
    ClientRequestContext.defaultRequestUrlAndHeaders = { url: CoreConstants.localDocument, headers: { [HEADER]: id } };
  }

  forget(answering: Answering): void {
    for (const [id, one] of this.answering) if (one === answering) this.answering.delete(id);
  }

  /** Tells the client of an event, as Excel does; its handlers have been called then. */
  async tell(event: string): Promise<void> {
    const entry = { messageCategory: 65_536, messageType: EVENTS[event], targetId: "Workbook", message: "{}" };
    for (const hear of this.hearing) hear({ entries: [entry] });
    await new Promise((next) => turn(next));
  }
}

// As it is now: tests may put clocks of their own in its place.
const turn = globalThis.setImmediate;

const clients = new Map<Platform, Connected>();

export function clientFor(platform: Platform): Connected {
  const client = clients.get(platform) ?? new Connected(platform);
  clients.set(platform, client);
  return client;
}
