import { existsSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { fileURLToPath } from "node:url";
import sirv from "sirv";

const DIST = fileURLToPath(new URL("../../dist", import.meta.url));

/** The built site (or another folder) on a free port of this machine. */
export async function serve(folder = DIST): Promise<{ origin: string; close: () => void }> {
  if (!existsSync(`${folder}/index.html`)) throw new Error(`${folder} has no page: run npm run build first`);
  const files = sirv(folder, { dev: true });
  const server = createServer((request, response) => {
    files(request, response, () => {
      response.statusCode = 404;
      response.end();
    });
  });
  await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
  return {
    origin: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    close: () => {
      server.closeAllConnections();
      server.close();
    },
  };
}
