import { readFileSync } from "node:fs";

const README = new URL("../../README.md", import.meta.url);

/** The README's steps that bring the add-in into each Excel, as plain text, with this manifest's own path and id. */
export function sideloading(manifest: string, id: string): string {
  const readme = readFileSync(README, "utf8").replaceAll("\r\n", "\n");
  const [, steps] = /^(\*\*Excel on the web\*\*\n.*)\n\nTo take the certificate away/ms.exec(readme) ?? [];
  if (!steps) throw new Error("The README has lost its steps for Excel.");
  return (
    steps
      .replace(/^ *```\n/gm, "")
      .replace(/\*\*(.+?)\*\*/g, "$1")
      .replace(/\b_(.+?)_\b/g, "$1")
      .replace(/`(.+?)`/g, "$1")
      .replace(/<(https:.+?)>/g, "$1")
      .replace(/\b[0-9a-f]{8}-[0-9a-f-]{27}\b/g, id)
      // A path may hold dollar signs.
      .replace(/"C:\\.*?manifest\.xml"|dist\/manifest\.xml/g, () => `"${manifest}"`)
  );
}
