/**
 * How long a visitor waits for the demo's first computed sheet with nothing in the browser's cache: prints the bytes
 * that come over the wire and when each step is done, the median of several openings, without and with a slow line.
 */

import type { Browser } from "playwright-core";
import { launch, serveBuilt } from "./launch";

const OPENINGS = 5;

/** A usual line at home: 10 megabits a second, 40 ms to the server and back. */
const SLOW = { offline: false, latency: 40, downloadThroughput: 10e6 / 8, uploadThroughput: 2e6 / 8 };

interface Sight {
  /** Bytes over the wire until the sheet was computed. */
  readonly bytes: number;
  /** Milliseconds of a processor that the page's own thread took until then: a busy machine changes little of it. */
  readonly worked: number;
  /** Milliseconds from the first request on: the script begins, the sheet is drawn, its values are computed. */
  readonly begun: number;
  readonly drawn: number;
  readonly computed: number;
}

/** Notes when the page hands itself over to tests, and when the open workbook is computed then. */
const WATCH = `
  const seen = {};
  let spreadsheet;
  Object.defineProperty(window, "pourwright", {
    get: () => spreadsheet,
    set: (given) => {
      spreadsheet = given;
      seen.drawn = performance.now();
      given.host.tables().then(() => { seen.computed = performance.now(); window.seen = seen; });
    },
  });`;

async function open(browser: Browser, address: string, line?: typeof SLOW): Promise<Sight> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  const page = await context.newPage();
  const devtools = await context.newCDPSession(page);
  await devtools.send("Network.enable");
  await devtools.send("Network.setCacheDisabled", { cacheDisabled: true });
  if (line) await devtools.send("Network.emulateNetworkConditions", line);
  let bytes = 0;
  devtools.on("Network.loadingFinished", ({ encodedDataLength }) => {
    bytes += encodedDataLength;
  });
  await page.addInitScript(WATCH);
  await devtools.send("Performance.enable", { timeDomain: "threadTicks" });
  await page.goto(address);
  await page.waitForFunction(() => "seen" in window);
  const received = bytes;
  const { metrics } = await devtools.send("Performance.getMetrics");
  const worked = (metrics.find(({ name }) => name === "ThreadTime")?.value ?? Number.NaN) * 1000;
  const marks = await page.evaluate(() => {
    const seen = (window as unknown as { seen: { drawn: number; computed: number } }).seen;
    const begun = performance.getEntriesByName("begun")[0]?.startTime ?? Number.NaN;
    return { ...seen, begun };
  });
  const sight = { bytes: received, worked, ...marks };
  await context.close();
  return sight;
}

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1] as number;

const [browser, site] = await Promise.all([launch(), serveBuilt()]);
try {
  for (const [name, line] of [
    ["this machine's own line", undefined],
    ["10 Mbit/s, 40 ms", SLOW],
  ] as const) {
    const sights: Sight[] = [];
    for (let i = 0; i < OPENINGS; i++) sights.push(await open(browser, `${site.address}/`, line));
    const of = (key: keyof Sight) => Math.round(median(sights.map((sight) => sight[key])));
    console.log(
      `${name}: ${of("bytes")} bytes; ${of("worked")} ms of a processor; begun ${of("begun")}, drawn ${of("drawn")}, computed ${of("computed")} ms`,
    );
  }
} finally {
  await browser.close();
  await site.stop();
}
