import { chmodSync, existsSync, mkdirSync, readFileSync } from "node:fs";
import { homedir } from "node:os";
import { join } from "node:path";
import { getHttpsServerOptions } from "office-addin-dev-certs";
import type { Certificate } from "./server";

/** Where the certificate library keeps what it makes. */
const FOLDER = join(homedir(), ".office-addin-dev-certs");
const AUTHORITY = join(FOLDER, "ca.crt");
const KEY = "localhost.key";

/**
 * A certificate for https://localhost, made on this machine and trusted by it. When the machine refuses to trust
 * it, the certificate is given all the same, with the reason: the user can trust it by hand.
 */
export async function localCertificate(): Promise<{ certificate: Certificate; untrusted: string | undefined }> {
  keepToOwner(FOLDER);
  try {
    const { cert, key } = await getHttpsServerOptions();
    return { certificate: { cert, key }, untrusted: undefined };
  } catch (problem) {
    if (!existsSync(join(FOLDER, KEY))) throw problem;
    const certificate = {
      cert: readFileSync(join(FOLDER, "localhost.crt")),
      key: readFileSync(join(FOLDER, KEY)),
    };
    return { certificate, untrusted: problem instanceof Error ? problem.message.trim() : String(problem) };
  } finally {
    keepToOwner(FOLDER);
  }
}

/** Lets nobody but their owner read a folder and the key in it. The library would let everyone; Windows keeps its own. */
export function keepToOwner(folder: string): void {
  mkdirSync(folder, { recursive: true });
  chmodSync(folder, 0o700);
  if (existsSync(join(folder, KEY))) chmodSync(join(folder, KEY), 0o600);
}

/** What to do by hand when the machine did not take the certificate. */
export function howToTrust(reason: string): string {
  const byHand: Partial<Record<NodeJS.Platform, string>> = {
    win32: `  certutil -user -addstore Root "${AUTHORITY}"`,
    darwin: `  security add-trusted-cert -r trustRoot -k ~/Library/Keychains/login.keychain-db "${AUTHORITY}"`,
    linux: `  sudo cp "${AUTHORITY}" /usr/local/share/ca-certificates/pourwright-localhost.crt
  sudo update-ca-certificates`,
  };
  return `This machine does not trust the certificate yet:
  ${reason.split("\n").join("\n  ")}

Trust it by hand, then close Excel and the browser and open them again:
${byHand[process.platform] ?? `  Add ${AUTHORITY} to the certificates your system trusts.`}

For Excel on the web it is enough to open the address below in the same browser once and to accept the
certificate there. A firm's computer may forbid both: then host the folder dist on a server of yours, see the README.`;
}
