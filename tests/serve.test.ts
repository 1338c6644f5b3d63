import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { get, type IncomingHttpHeaders } from "node:http";
import { get as getSecure } from "node:https";
import { createConnection } from "node:net";
import { networkInterfaces, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { brotliDecompressSync, gunzipSync } from "node:zlib";
import { generateCertificates } from "office-addin-dev-certs";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import webpack, { type Compiler } from "webpack";
import { howToTrust, keepToOwner } from "../src/build/certificate";
import { type Running, serve } from "../src/build/server";
import { sideloading } from "../src/build/sideloading";
import { wholeFiles } from "../src/build/wholeFiles";
import { dist } from "./dist";

const root = fileURLToPath(new URL("../", import.meta.url));
const above = mkdtempSync(join(tmpdir(), "pourwright-serve-"));
const directory = join(above, "dist");

beforeAll(() => {
  mkdirSync(join(directory, "help"), { recursive: true });
  writeFileSync(join(directory, "index.html"), "the page");
  writeFileSync(join(directory, "functions.json"), "{}");
  writeFileSync(join(directory, "help/index.html"), "the help");
  writeFileSync(join(directory, ".hidden"), "secret");
  writeFileSync(join(above, "secret.txt"), "secret");
  mkdirSync(join(above, "dist-other"));
  writeFileSync(join(above, "dist-other/secret.txt"), "secret");
});
afterAll(() => rmSync(above, { recursive: true }));

let running: Running | undefined;
afterEach(async () => {
  await running?.stop();
  running = undefined;
});

const portOf = ({ address }: Running): number => Number(new URL(address).port);

/** Asks for a path as it is written: fetch would tidy up the dots. */
function ask(
  port: number,
  path: string,
  headers: Readonly<Record<string, string>> = {},
): Promise<{ status: number; text: string; type: string; headers: IncomingHttpHeaders }> {
  return new Promise((resolve, reject) => {
    get({ host: "127.0.0.1", port, path, headers }, (response) => {
      let text = "";
      response.setEncoding("utf8").on("data", (part: string) => {
        text += part;
      });
      response.on("end", () =>
        resolve({
          status: response.statusCode ?? 0,
          text,
          type: String(response.headers["content-type"]),
          headers: response.headers,
        }),
      );
    }).on("error", reject);
  });
}

function answers(host: string, port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = createConnection({ host, port })
      .on("connect", () => resolve(true))
      .on("error", () => resolve(false));
    socket.on("connect", () => socket.destroy());
  });
}

describe("the server", () => {
  it("serves the pages of its directory", async () => {
    running = await serve({ directory, port: 0 });
    expect(running.address).toMatch(/^http:\/\/localhost:\d+$/);
    expect(await (await fetch(running.address)).text()).toBe("the page");
    expect(await ask(portOf(running), "/help/")).toMatchObject({ status: 200, text: "the help" });
    expect(await ask(portOf(running), "/functions.json")).toMatchObject({
      status: 200,
      type: "application/json; charset=utf-8",
    });
    expect(await ask(portOf(running), "/nothing")).toMatchObject({ status: 404 });
  });

  it("lets Excel on the web ask for the functions, and keeps nothing old", async () => {
    running = await serve({ directory, port: 0 });
    const { headers } = await fetch(`${running.address}/functions.json`);
    expect(headers.get("access-control-allow-origin")).toBe("*");
    expect(headers.get("cache-control")).toBe("no-cache");
    // The pane stands in a frame there.
    const pane = await fetch(`${running.address}/pane.html`);
    expect([pane.headers.get("x-frame-options"), pane.headers.get("content-security-policy")]).toEqual([null, null]);
  });

  it("says what its files are and lets no browser guess, and sends one again only when it has changed", async () => {
    running = await serve({ directory, port: 0 });
    const url = `${running.address}/functions.json`;
    const { headers } = await fetch(url);
    expect(headers.get("x-content-type-options")).toBe("nosniff");
    expect(headers.get("content-type")).toBe("application/json; charset=utf-8");
    const port = portOf(running);
    // Not by fetch, which asks for the whole file whatever it is told of an older one.
    const again = () => ask(port, "/functions.json", { "If-None-Match": headers.get("etag") as string });
    expect((await again()).status).toBe(304);
    writeFileSync(join(directory, "functions.json"), "[1]");
    expect((await again()).text).toBe("[1]");
    writeFileSync(join(directory, "functions.json"), "{}");
    expect((await fetch(url, { method: "POST" })).status).toBe(405);
  });

  it("sends a file compressed to those who can read it so, and as it is to others", async () => {
    // The files beside it are told apart by what they hold: it is the browser that unpacks them.
    writeFileSync(join(directory, "page.js"), "plain");
    writeFileSync(join(directory, "page.js.br"), "as br");
    writeFileSync(join(directory, "page.js.gz"), "as gzip");
    running = await serve({ directory, port: 0 });
    const port = portOf(running);
    const as = async (accepted: string, path = "/page.js?1") => {
      const { text, type, headers } = await ask(port, path, { "Accept-Encoding": accepted });
      return [text, type, headers["content-encoding"], headers.vary];
    };
    const js = "text/javascript; charset=utf-8";
    expect(await as("gzip, deflate, br, zstd")).toEqual(["as br", js, "br", "Accept-Encoding"]);
    expect(await as("deflate, gzip;q=0.5")).toEqual(["as gzip", js, "gzip", "Accept-Encoding"]);
    expect(await as("br;q=0, gzip")).toEqual(["as gzip", js, "gzip", "Accept-Encoding"]);
    expect(await as("identity")).toEqual(["plain", js, undefined, "Accept-Encoding"]);
    // A build may have left none.
    rmSync(join(directory, "page.js.br"));
    expect(await as("br")).toEqual(["plain", js, undefined, "Accept-Encoding"]);
    expect((await ask(port, "/nothing.js", { "Accept-Encoding": "br" })).status).toBe(404);
  });

  it.each([
    "/../secret.txt",
    "/%2e%2e/secret.txt",
    "/..%2fsecret.txt",
    "/help/../../secret.txt",
    "/../dist-other/secret.txt",
    "//secret.txt",
    "/..%5csecret.txt",
    "/help/%00",
    "/%",
    "/.hidden",
  ])("serves nothing outside it: %s", async (path) => {
    running = await serve({ directory, port: 0 });
    const { status, text } = await ask(portOf(running), path);
    expect(text).not.toContain("secret");
    expect(status).toBe(404);
  });

  it("answers this machine only", async () => {
    running = await serve({ directory, port: 0 });
    const outside = Object.values(networkInterfaces())
      .flatMap((list = []) => list)
      .filter(({ internal, family }) => !internal && family === "IPv4")
      .map(({ address }) => address);
    // On Linux all of 127.* is this machine: a server that listens everywhere would answer at 127.0.0.2 too.
    for (const host of ["127.0.0.2", ...outside]) expect(await answers(host, portOf(running))).toBe(false);
    expect(await answers("127.0.0.1", portOf(running))).toBe(true);
  });

  it("says when its port is taken, and leaves nothing listening", async () => {
    running = await serve({ directory, port: 0 });
    await expect(serve({ directory, port: portOf(running) })).rejects.toMatchObject({ code: "EADDRINUSE" });
    const port = portOf(running);
    await running.stop();
    expect(await answers("127.0.0.1", port)).toBe(false);
    running = await serve({ directory, port });
  });

  it("serves by https with a certificate", async () => {
    const paths = ["ca.crt", "localhost.crt", "localhost.key"].map((name) => join(above, name)) as [
      string,
      string,
      string,
    ];
    await generateCertificates(...paths);
    const [ca, cert, key] = paths.map((path) => readFileSync(path)) as [Buffer, Buffer, Buffer];
    running = await serve({ directory, port: 0, certificate: { cert, key } });
    expect(running.address).toMatch(/^https:/);
    const { address } = running;
    const status = await new Promise((resolve, reject) => {
      getSecure(address, { ca }, (response) => resolve(response.resume().statusCode)).on("error", reject);
    });
    expect(status).toBe(200);
  });
});

describe("the compressed files of a build", () => {
  it("hold what the plain ones do, and stand beside them where they are smaller by far", () => {
    const plain = readFileSync(new URL("engine.js", dist));
    const [br, gz] = ["engine.js.br", "engine.js.gz"].map((name) => readFileSync(new URL(name, dist))) as [
      Buffer,
      Buffer,
    ];
    expect(brotliDecompressSync(br).equals(plain)).toBe(true);
    expect(gunzipSync(gz).equals(plain)).toBe(true);
    expect(br.length).toBeLessThan(plain.length / 3);
    expect(existsSync(new URL("samples/1-studio.xlsx.gz", dist))).toBe(false);
  });
});

describe("a build beside the server", () => {
  const outputPath = join(above, "rebuilt");
  const LENGTH = 3_000_000;

  /** Builds a site of a page and a large file, of one letter each, as the real build does: emptied, then written anew. */
  function build(letter: string): Promise<void> {
    const text = letter.repeat(LENGTH);
    const compiler = webpack({
      mode: "none",
      entry: {},
      output: { path: outputPath, clean: true },
      plugins: [
        wholeFiles,
        (compiler: Compiler) =>
          compiler.hooks.thisCompilation.tap("Site", (compilation) =>
            compilation.hooks.processAssets.tap("Site", () => {
              for (const name of ["index.html", "large.js", `only-${letter}.js`]) {
                compilation.emitAsset(name, new webpack.sources.RawSource(text));
              }
            }),
          ),
      ],
    });
    return new Promise((resolve, reject) => {
      compiler.run((problem) => compiler.close(() => (problem ? reject(problem) : resolve())));
    });
  }

  it("does not end it, and lets nobody have half a file", async () => {
    await build("a");
    running = await serve({ directory: outputPath, port: 0 });
    const port = portOf(running);
    let building = true;
    const answers = { 200: 0, 404: 0 };
    const visitor = async (path: string): Promise<void> => {
      while (building) {
        const { status, text } = await ask(port, path);
        answers[status as keyof typeof answers]++;
        if (status === 404) continue;
        expect(status).toBe(200);
        expect(text).toHaveLength(LENGTH);
        expect(text).toBe((text[0] as string).repeat(LENGTH));
      }
    };
    const visitors = ["/", "/large.js", "/only-a.js", "/only-b.js"].map(visitor);
    for (const letter of "babababa") await build(letter);
    // And what no build does: the folder is gone for a while.
    rmSync(outputPath, { recursive: true });
    expect((await ask(port, "/")).status).toBe(404);
    await build("c");
    building = false;
    await Promise.all(visitors);
    expect((await ask(port, "/large.js")).text[0]).toBe("c");
    expect(answers[200]).toBeGreaterThan(0);
    expect(answers[404]).toBeGreaterThan(0);
  });
});

describe("npm start", () => {
  /** Starts the script; gives what it has said once it has said it, or when it ended. */
  function start(port: number | string): {
    child: ChildProcess;
    said: (words: string) => Promise<string>;
    code: Promise<number | null>;
  } {
    const child = spawn(process.execPath, ["--import", "tsx", "src/build/serve.ts"], {
      cwd: root,
      env: { ...process.env, PORT: String(port) },
    });
    let text = "";
    const code = new Promise<number | null>((resolve) => child.on("close", resolve));
    const said = (words: string): Promise<string> =>
      new Promise((resolve) => {
        const look = (): void => {
          if (text.includes(words)) resolve(text);
        };
        for (const stream of [child.stdout, child.stderr]) {
          stream?.on("data", (part) => {
            text += part;
            look();
          });
        }
        code.then(() => resolve(text));
      });
    return { child, said, code };
  }

  it("prints the address it serves the built site on", async () => {
    const probe = await serve({ directory, port: 0 });
    const port = portOf(probe);
    await probe.stop();
    const { child, said, code } = start(port);
    try {
      expect(await said("Ctrl+C")).toContain(`http://localhost:${port}`);
      expect((await ask(port, "/")).text).toContain("<html");
      expect((await ask(port, "/package.json")).status).toBe(404);
    } finally {
      child.kill();
      await code;
    }
  });

  it("says when the port is taken and how to choose another", async () => {
    running = await serve({ directory, port: 0 });
    const { said, code } = start(portOf(running));
    const text = await said("never");
    expect(text).toContain(`Port ${portOf(running)} is taken`);
    expect(text).toContain("PORT=3001 npm start");
    expect(await code).toBe(1);
  });

  it("refuses a PORT that is none", async () => {
    const { said, code } = start("many");
    expect(await said("never")).toContain("PORT=many is no port");
    expect(await code).toBe(1);
  });
});

describe("npm run excel", () => {
  it("says how to bring the add-in into each Excel", () => {
    const text = sideloading("/x/manifest.xml", "an-id");
    expect(text).toContain("Upload My Add-in");
    expect(text).toContain(
      'reg add HKCU\\SOFTWARE\\Microsoft\\Office\\16.0\\Wef\\Developer /v an-id /t REG_SZ /d "/x/manifest.xml" /f',
    );
    expect(text).toContain('cp "/x/manifest.xml" ~/Library/Containers/com.microsoft.Excel/Data/Documents/wef/');
    expect(text).toContain("reg delete HKCU\\SOFTWARE\\Microsoft\\Office\\16.0\\Wef\\Developer /v an-id /f");
    expect(text).not.toMatch(/`|\*\*|_Home_|dist|C:/);
  });

  it("has the steps from the README, which names the manifest's own id", () => {
    const [readme, manifest] = ["README.md", "manifest.xml"].map((name) => readFileSync(join(root, name), "utf8"));
    const id = /<Id>(.+)<\/Id>/.exec(manifest ?? "")?.[1] as string;
    expect(readme?.split(id)).toHaveLength(3);
  });

  it("takes a path as it is, dollar signs and all", () => {
    expect(sideloading("/my $& $1/manifest.xml", "an-id")).toContain('Choose "/my $& $1/manifest.xml" and Upload.');
  });

  it("looks at the port before it builds or makes a certificate", async () => {
    // Whoever has the port already serves as well.
    running = await serve({ directory, port: 3000 }).catch(() => undefined);
    const home = mkdtempSync(join(above, "home-"));
    const child = spawn(process.execPath, ["--import", "tsx", "src/build/excel.ts"], {
      cwd: root,
      env: { ...process.env, HOME: home, USERPROFILE: home },
    });
    let text = "";
    for (const stream of [child.stdout, child.stderr]) stream.on("data", (part) => (text += part));
    expect(await new Promise((resolve) => child.on("close", resolve))).toBe(1);
    expect(text.trim()).toMatch(/^Port 3000 is taken by another program/);
    expect(existsSync(join(home, ".office-addin-dev-certs"))).toBe(false);
  });

  // Windows has no such modes.
  it.skipIf(process.platform === "win32")("lets nobody but its owner read the key", async () => {
    const folder = mkdtempSync(join(above, "certificates-"));
    keepToOwner(folder);
    const paths = ["ca.crt", "localhost.crt", "localhost.key"].map((name) => join(folder, name));
    await generateCertificates(...(paths as [string, string, string]));
    keepToOwner(folder);
    const modeOf = (path: string) => (statSync(path).mode & 0o777).toString(8);
    expect([modeOf(folder), modeOf(join(folder, "localhost.key"))]).toEqual(["700", "600"]);
  });

  it("says why a certificate is not trusted and what to do", () => {
    const text = howToTrust("Unable to install the CA certificate. sudo: not found");
    expect(text).toContain("sudo: not found");
    expect(text).toContain("ca.crt");
  });
});
