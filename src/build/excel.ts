/** `npm run excel`: builds the add-in, serves it by https for Excel on this machine, and says how to bring it into Excel. */

import { execSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { howToTrust, localCertificate } from "./certificate";
import { DIST, giveUp, requirePort, serveDist } from "./server";
import { sideloading } from "./sideloading";

/** The port of the address that the manifest names. */
const PORT = 3000;
const PORT_TAKEN = `Port ${PORT} is taken by another program, perhaps by npm start. The manifest names this port, so close that program
and run npm run excel again.`;

// First of all: a build and a certificate take a while, and would be for nothing.
await requirePort(PORT, PORT_TAKEN);

try {
  execSync("npm run build", { stdio: "inherit" });
} catch {
  giveUp("The site could not be built; the reason stands above.");
}

const { certificate, untrusted } = await localCertificate().catch((problem: unknown) =>
  giveUp(`No certificate could be made: ${problem instanceof Error ? problem.message : problem}`),
);
const { address } = await serveDist({ port: PORT, certificate }, PORT_TAKEN);

const manifest = join(DIST, "manifest.xml");
const [, id = ""] = /<Id>(.*)<\/Id>/.exec(readFileSync(manifest, "utf8")) ?? [];

if (untrusted !== undefined) console.log(`\n${howToTrust(untrusted)}`);
console.log(`
Pourwright is served at ${address} for Excel on this machine. Leave this window open; stop with Ctrl+C.

Bring it into Excel once:

${sideloading(manifest, id)}
The README says more.
`);
