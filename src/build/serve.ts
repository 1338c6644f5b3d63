/** `npm start`: serves the page on this machine. */

import { serveDist, wantedPort } from "./server";

const port = wantedPort();
const other = port === 3001 ? 3002 : 3001;

const { address } = await serveDist(
  { port },
  `Port ${port} is taken by another program. Close that one, or choose another port:

  PORT=${other} npm start                  (macOS, Linux)
  $env:PORT=${other}; npm start            (Windows PowerShell)
  set PORT=${other} && npm start           (Windows command prompt)`,
);

console.log(`
Pourwright runs at ${address}
Open that address in a browser. It works without the internet. Stop with Ctrl+C.
`);
