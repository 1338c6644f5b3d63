import { existsSync } from "node:fs";
import { createServer as createHttpServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import { createServer as createHttpsServer } from "node:https";
import type { AddressInfo } from "node:net";
import { extname } from "node:path";
import { fileURLToPath } from "node:url";
import send from "send";
import { ENCODINGS } from "./compressed";

/** Where the build puts the site. */
export const DIST = fileURLToPath(new URL("../../dist/", import.meta.url));

export interface Certificate {
  readonly cert: Buffer;
  readonly key: Buffer;
}

export interface Site {
  readonly directory: string;
  /** 0 takes any that is free. */
  readonly port: number;
  /** With it the site is served by https. */
  readonly certificate?: Certificate;
}

export interface Running {
  /** `http://localhost:3000` */
  readonly address: string;
  readonly stop: () => Promise<void>;
}

/** What the build also writes compressed. */
const TYPES: Readonly<Record<string, string>> = {
  ".css": "text/css; charset=utf-8",
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".svg": "image/svg+xml",
  ".txt": "text/plain; charset=utf-8",
};

/** The best encoding that a browser says it can read. */
function encodingFor(request: IncomingMessage): keyof typeof ENCODINGS | undefined {
  const accepted = String(request.headers["accept-encoding"] ?? "").toLowerCase();
  const names = accepted.split(",").flatMap((one) => (/;\s*q=0(\.0*)?\s*$/.test(one) ? [] : one.split(";")[0]?.trim()));
  return (Object.keys(ENCODINGS) as (keyof typeof ENCODINGS)[]).find((name) => names.includes(name));
}

/**
 * Serves the files of a directory to this machine only, on both of its loopback addresses: `localhost` is either.
 * Rejects with a code of EADDRINUSE when the port is taken on one of them.
 */
export async function serve({ directory, port, certificate }: Site): Promise<Running> {
  const answer = (request: IncomingMessage, response: ServerResponse): void => {
    // A new build must show at once, and Excel on the web asks for the functions from its own address.
    response.setHeader("Cache-Control", "no-cache");
    response.setHeader("Access-Control-Allow-Origin", "*");
    response.setHeader("X-Content-Type-Options", "nosniff");
    const refuse = (status: number): void => {
      // A file that went away just now has its length in the headers already; one half sent can only be broken off.
      if (response.headersSent) response.destroy();
      else response.writeHead(status, { "Content-Length": 0 }).end();
    };
    if (request.method !== "GET" && request.method !== "HEAD") {
      refuse(405);
      return;
    }
    const path = (request.url ?? "/").replace(/[?#].*/s, "").replace(/\/$/, "/index.html");
    // A build beside it may take a file away at any moment: that is a 404, and no reason to end.
    const sendPlain = (): void => {
      send(request, path, { root: directory, cacheControl: false })
        .on("error", () => refuse(404))
        .on("directory", () => refuse(404))
        .pipe(response);
    };
    const type = TYPES[extname(path)];
    if (type) response.setHeader("Vary", "Accept-Encoding");
    const encoding = type && encodingFor(request);
    if (!encoding) {
      sendPlain();
      return;
    }
    send(request, path + ENCODINGS[encoding], { root: directory, cacheControl: false, acceptRanges: false })
      .on("headers", () => {
        response.setHeader("Content-Encoding", encoding);
        response.setHeader("Content-Type", type);
      })
      .on("error", () => (response.headersSent ? response.destroy() : sendPlain()))
      .pipe(response);
  };
  const make = (): Server => (certificate ? createHttpsServer(certificate, answer) : createHttpServer(answer));

  const first = make();
  await listen(first, "127.0.0.1", port);
  const servers = [first];
  const { port: taken } = first.address() as AddressInfo;
  const second = make();
  try {
    await listen(second, "::1", taken);
    servers.push(second);
  } catch (problem) {
    // A machine without IPv6 has only the first.
    if (codeOf(problem) === "EADDRINUSE") {
      await close(first);
      throw problem;
    }
  }
  return {
    address: `${certificate ? "https" : "http"}://localhost:${taken}`,
    stop: async () => {
      await Promise.all(servers.map(close));
    },
  };
}

function listen(server: Server, host: string, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen({ host, port }, () => {
      server.off("error", reject);
      resolve();
    });
  });
}

function close(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}

function codeOf(problem: unknown): string | undefined {
  return problem instanceof Error && "code" in problem ? String(problem.code) : undefined;
}

/** The port the user asked for by PORT, or 3000. */
export function wantedPort(): number {
  const port = Number(process.env.PORT ?? 3000);
  if (Number.isInteger(port) && port > 0 && port < 65_536) return port;
  return giveUp(`PORT=${process.env.PORT} is no port: give a whole number from 1 to 65535.`);
}

/** Serves the built site, or says why not and what to do, and ends. */
export async function serveDist(site: Omit<Site, "directory">, portTaken: string): Promise<Running> {
  if (!existsSync(DIST)) giveUp("There is nothing to serve yet. Run: npm run build");
  return serveOrGiveUp(site, portTaken);
}

/** Says so and ends when a port cannot be had. */
export async function requirePort(port: number, portTaken: string): Promise<void> {
  const running = await serveOrGiveUp({ port }, portTaken);
  await running.stop();
}

async function serveOrGiveUp(site: Omit<Site, "directory">, portTaken: string): Promise<Running> {
  try {
    return await serve({ directory: DIST, ...site });
  } catch (problem) {
    if (codeOf(problem) === "EADDRINUSE") giveUp(portTaken);
    if (codeOf(problem) === "EACCES") giveUp(`Port ${site.port} is not for everyone. Choose one above 1023.`);
    throw problem;
  }
}

export function giveUp(message: string): never {
  console.error(`\n${message}\n`);
  process.exit(1);
}
