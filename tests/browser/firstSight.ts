/**
 * How long a visitor waits for the demo's first computed sheet with nothing in the browser's cache: prints the bytes
 * that come over the wire and when each step is done, the median of several openings, without and with a slow line.
 */

import { fileURLToPath } from "node:url";
import type { Browser } from "playwright-core";
import { serve } from "../../src/build/server";
import { readMe } from "../../src/samples/studio/readMe";
import { dist } from "../dist";
import { launch } from "./launch";

const OPENINGS = 5;

/** A usual line at home: 10 megabits a second, 40 ms to the server and back. */
const SLOW = { offline: false, latency: 40, downloadThroughput: 10e6 / 8, uploadThroughput: 2e6 / 8 };

interface Sight {
  /** Bytes over the wire until the page was ready. */
  readonly bytes: number;
  /** Milliseconds of a processor that the page's own thread took until it was ready: a busy machine changes little. */
  readonly worked: number;
  /**
   * Milliseconds from the first request on: the script begins, a frame first shows the sheet, the page takes what is
   * typed with all values there. What is drawn first holds all values already (drawnSoon.test.ts); of builds that
   * calculated after it, the last of the three is the first sight of a computed sheet.
   */
  readonly begun: number;
  readonly drawn: number;
  readonly ready: number;
}

const [TITLE] = readMe().cells.flatMap(({ content }) => (content && "text" in content ? [content.text] : []));

/**
 * Notes when a frame first shows the title of the demo's first sheet, and when one shows the page that has handed itself
 * over to tests with a workbook whose cells hold all values.
 */
const WATCH = `
  // A message comes right after the frame that it is sent in, before all that waits for it.
  const noteFrame = (name) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => { window[name] = performance.now(); };
    port2.postMessage("");
  };
  const { fillText } = CanvasRenderingContext2D.prototype;
  CanvasRenderingContext2D.prototype.fillText = function (text, ...place) {
    if (text === ${JSON.stringify(TITLE)}) {
      CanvasRenderingContext2D.prototype.fillText = fillText;
      noteFrame("drawn");
    }
    fillText.call(this, text, ...place);
  };
  let spreadsheet;
  Object.defineProperty(window, "pourwright", {
    get: () => spreadsheet,
    set: (given) => {
      spreadsheet = given;
      given.host.tables().then(() => requestAnimationFrame(() => noteFrame("ready")));
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
  await page.waitForFunction(() => "drawn" in window && "ready" in window);
  const received = bytes;
  const { metrics } = await devtools.send("Performance.getMetrics");
  const worked = (metrics.find(({ name }) => name === "ThreadTime")?.value ?? Number.NaN) * 1000;
  const marks = await page.evaluate(() => ({
    begun: performance.getEntriesByName("begun")[0]?.startTime ?? Number.NaN,
    ...(({ drawn, ready }) => ({ drawn, ready }))(window as unknown as { drawn: number; ready: number }),
  }));
  const sight = { bytes: received, worked, ...marks };
  await context.close();
  return sight;
}

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1] as number;

/** Further builds to compare with, each a folder: they take turns, so that a busy machine is as busy for each. */
const folders = [fileURLToPath(dist), ...process.argv.slice(2)];
const browser = await launch();
const sites = await Promise.all(folders.map((directory) => serve({ directory, port: 0 })));
try {
  for (const [name, line] of [
    ["this machine's own line", undefined],
    ["10 Mbit/s, 40 ms", SLOW],
  ] as const) {
    const sights = sites.map((): Sight[] => []);
    for (let i = 0; i < OPENINGS; i++) {
      for (const [at, site] of sites.entries()) sights[at]?.push(await open(browser, `${site.address}/`, line));
    }
    for (const [at, seen] of sights.entries()) {
      const of = (key: keyof Sight) => Math.round(median(seen.map((sight) => sight[key])));
      console.log(
        `${name}, ${folders[at]}: ${of("bytes")} bytes; ${of("worked")} ms of a processor; begun ${of("begun")}, drawn ${of("drawn")}, ready ${of("ready")} ms`,
      );
    }
  }
} finally {
  await browser.close();
  await Promise.all(sites.map((site) => site.stop()));
}
