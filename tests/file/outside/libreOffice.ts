import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";

const HOW_TO_GET_IT =
  "LibreOffice is missing: this check needs its command soffice. Install it (on Debian or Ubuntu: " +
  "apt-get install libreoffice-calc; elsewhere from libreoffice.org) and see that soffice is on the PATH.";

/** Throws with what to do where LibreOffice is not on this machine. */
export function libreOfficeVersion(): string {
  try {
    return execFileSync("soffice", ["--version"], { encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] }).trim();
  } catch {
    throw new Error(HOW_TO_GET_IT);
  }
}

/** By itself LibreOffice believes the values that Excel saved, and works nothing out: its settings for that. */
const ALWAYS_CALCULATE = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry"><item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item></oor:items>
`;

/**
 * Files as LibreOffice writes them after it opened these and worked all out again, by the same names. It has a profile
 * of its own, so that a running one is left alone.
 */
export function throughLibreOffice(
  files: ReadonlyMap<string, Uint8Array>,
  cache: string,
): ReadonlyMap<string, Uint8Array | undefined> {
  const [from, to, profile] = ["given", "taken", "profile"].map((name) => join(cache, "libreoffice", name)) as [
    string,
    string,
    string,
  ];
  for (const folder of [from, to]) {
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder, { recursive: true });
  }
  mkdirSync(join(profile, "user"), { recursive: true });
  writeFileSync(join(profile, "user/registrymodifications.xcu"), ALWAYS_CALCULATE);
  const paths = [...files].map(([name, bytes]) => {
    const path = join(from, `${name}.xlsx`);
    writeFileSync(path, withoutUnknown(bytes));
    return path;
  });
  const settings = ["--headless", `-env:UserInstallation=${pathToFileURL(profile).href}`];
  const filter = "xlsx:Calc MS Excel 2007 XML";
  execFileSync("soffice", [...settings, "--convert-to", filter, "--outdir", to, ...paths], { stdio: "ignore" });
  return new Map([...files.keys()].map((name) => [name, readIfThere(join(to, `${name}.xlsx`))]));
}

function readIfThere(path: string): Uint8Array | undefined {
  try {
    return readFileSync(path);
  } catch {
    return undefined;
  }
}

/** Whether LibreOffice cannot work a formula out: functions of ours, and those that its version 7.4 does not know. */
export const isUnknown = (formula: string): boolean => /_xldudf_POUR_|_xlfn\._xlws\.|_xlfn\.ANCHORARRAY/.test(formula);

/** Formulas and tables of trials. */
const FORMULAS = /<f\b[^>]*t="dataTable"[^>]*\/>|<f\b[^>]*(?<!\/)>([^<]*)<\/f>/g;

/** A file whose cells hold their values alone where LibreOffice cannot work them out. */
function withoutUnknown(bytes: Uint8Array): Uint8Array {
  const parts = Object.entries(unzipSync(bytes)).map(([path, content]): [string, Uint8Array] => {
    if (!path.endsWith(".xml")) return [path, content];
    const xml = strFromU8(content);
    return /<worksheet\b/.test(xml)
      ? [
          path,
          strToU8(
            xml.replace(FORMULAS, (all, formula?: string) => (formula !== undefined && !isUnknown(formula) ? all : "")),
          ),
        ]
      : [path, content];
  });
  return zipSync(Object.fromEntries(parts));
}
