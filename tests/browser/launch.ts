import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Browser, type BrowserContext, chromium, type LaunchOptions } from "playwright-core";
import { type Running, serve } from "../../src/build/server";
import { dist } from "../dist";
import { PATIENCE } from "./page";

const CACHE = fileURLToPath(new URL("../../.cache", import.meta.url));
const HOME = join(CACHE, "chromium");

/** Drawing by a graphics processor that is itself played by software would take most of a test's time. */
const ARGS = ["--no-sandbox", "--disable-gpu"];

const HOW_TO_GET_ONE =
  "No browser for the tests. Install Chromium or Chrome and name its program in the environment: POURWRIGHT_BROWSER=/path/to/chrome npm test";

/** A browser to test with, its pages patient. */
export async function launch(): Promise<Browser> {
  const browser = await chromium.launch({ ...(await program()), ...PATIENCE });
  browser.on("context", (context) => context.setDefaultTimeout(PATIENCE.timeout));
  return browser;
}

export interface OwnProcess {
  /** The pages of its one profile. */
  readonly context: BrowserContext;
  /** Ends it with no word of warning, as a loss of power does. */
  readonly kill: () => Promise<void>;
}

/** A browser whose profile is in this folder, as a user's is, in a process that can be killed. */
export async function launchProcess(profile: string): Promise<OwnProcess> {
  const { executablePath = "", args = [], env } = await program();
  const own = ["--headless", "--remote-debugging-port=0", "--no-first-run", `--user-data-dir=${profile}`];
  const running = spawn(executablePath, [...args, ...own, "about:blank"], {
    env: env as NodeJS.ProcessEnv,
    stdio: ["ignore", "ignore", "pipe"],
    // A group of its own, so that the processes which it starts can be ended with it.
    detached: true,
  });
  const browser = await chromium.connectOverCDP(await debuggingAddress(running), PATIENCE);
  const context = browser.contexts()[0] as BrowserContext;
  context.setDefaultTimeout(PATIENCE.timeout);
  const kill = () =>
    new Promise<void>((gone) => {
      running.once("exit", () => gone());
      process.kill(-(running.pid as number), "SIGKILL");
    });
  return { context, kill };
}

function debuggingAddress(running: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = "";
    running.stderr?.on("data", (text) => {
      said += text;
      const [, address] = /DevTools listening on (ws:\S+)/.exec(said) ?? [];
      if (address) resolve(address);
    });
    running.once("exit", () => reject(new Error(`The browser has ended: ${said}`)));
  });
}

/** The browser that POURWRIGHT_BROWSER names, else the one that came with npm (Linux on x64). */
async function program(): Promise<LaunchOptions> {
  const named = process.env.POURWRIGHT_BROWSER;
  if (named) {
    if (!existsSync(named)) throw new Error(`POURWRIGHT_BROWSER: there is no program ${named}`);
    return { executablePath: named, args: ARGS };
  }
  if (process.platform !== "linux" || process.arch !== "x64") throw new Error(HOW_TO_GET_ONE);
  if (!existsSync(HOME)) await unpack();
  return {
    executablePath: join(HOME, "chromium"),
    args: [...ARGS, "--no-zygote"],
    env: {
      ...(process.env as Record<string, string>),
      LD_LIBRARY_PATH: join(HOME, "al2023", "lib"),
      FONTCONFIG_FILE: join(HOME, "fonts.conf"),
    },
  };
}

/** The built site on a free port of this machine. */
export async function serveBuilt(): Promise<Running> {
  return serve({ directory: fileURLToPath(dist), port: 0 });
}

/** Unpacks the packaged browser once. Aside first: another test process may be at it too, and the first one wins. */
async function unpack(): Promise<void> {
  mkdirSync(CACHE, { recursive: true });
  const aside = mkdtempSync(join(CACHE, "chromium-"));
  const { TMPDIR, LD_LIBRARY_PATH, FONTCONFIG_PATH, AWS_EXECUTION_ENV } = process.env;
  try {
    // The package unpacks into the temporary folder, and its libraries only where it takes itself to be on AWS.
    Object.assign(process.env, { TMPDIR: aside, AWS_EXECUTION_ENV: "AWS_Lambda_nodejs20.x" });
    const { default: packaged } = await import("@sparticuz/chromium");
    await packaged.executablePath();
  } finally {
    for (const [name, value] of Object.entries({ TMPDIR, LD_LIBRARY_PATH, FONTCONFIG_PATH, AWS_EXECUTION_ENV })) {
      if (value === undefined) delete process.env[name];
      else process.env[name] = value;
    }
  }
  // Without fonts a canvas measures all text as having no width.
  writeFileSync(
    join(aside, "fonts.conf"),
    `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig>
<dir>${join(HOME, "fonts", "fonts")}</dir><dir>/usr/share/fonts</dir><cachedir>${join(HOME, "font-cache")}</cachedir>
</fontconfig>`,
  );
  try {
    renameSync(aside, HOME);
  } catch {
    rmSync(aside, { recursive: true, force: true });
  }
}
