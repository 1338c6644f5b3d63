import { dirname, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { describe, expect, it } from "vitest";

const src = fileURLToPath(new URL("../src/", import.meta.url));

/** The libraries are the same for every probe: parsed once. */
const parsed = new Map<string, ts.SourceFile | undefined>();

/** The complaints of the compiler when a file with this text stood in a folder of src, under the folder's own rules. */
function complaints(folder: string, text: string): string[] {
  const config = resolve(src, folder, "tsconfig.json");
  const read = ts.getParsedCommandLineOfConfigFile(config, {}, {
    ...ts.sys,
    onUnRecoverableConfigFileDiagnostic: (diagnostic) => {
      throw new Error(String(diagnostic.messageText));
    },
  } as ts.ParseConfigFileHost);
  if (!read) throw new Error(`${config} cannot be read`);
  const probe = resolve(src, folder, "probe.ts");
  const options = { ...read.options, noEmit: true };
  const host = ts.createCompilerHost(options);
  const { fileExists, readFile, getSourceFile } = host;
  host.fileExists = (name) => resolve(name) === probe || fileExists(name);
  host.readFile = (name) => (resolve(name) === probe ? text : readFile(name));
  host.getSourceFile = (name, languageVersion, ...rest) => {
    if (resolve(name) === probe) return ts.createSourceFile(name, text, languageVersion);
    if (!parsed.has(name)) parsed.set(name, getSourceFile(name, languageVersion, ...rest));
    return parsed.get(name);
  };
  host.getCurrentDirectory = () => dirname(config);
  const program = ts.createProgram([...read.fileNames, probe], options, host);
  return [...program.getOptionsDiagnostics(), ...program.getSemanticDiagnostics(program.getSourceFile(probe))].map(
    ({ messageText }) => ts.flattenDiagnosticMessageText(messageText, " "),
  );
}

describe("the walls between the parts", () => {
  it.each([
    ["core", 'import { Fault } from "./fault"; export const a = Fault;'],
    ["runsheet", 'import { plain } from "../core/check/plain"; export const a = plain;'],
    ["runsheet/plan", 'import { VESSELS } from "../tables/vessels"; export const a = VESSELS;'],
    ["runsheet/stock", 'import { MOVES } from "../tables/moves"; export const a = MOVES;'],
    [
      "file",
      'import type { CellValue } from "../sheet/sheet"; export type A = CellValue; export const a = TextDecoder;',
    ],
    ["engine", 'import type { Sheet } from "../sheet/sheet"; export type A = Sheet;'],
    [
      "pane",
      'import type { Host } from "../host/host"; export const a = (host: Host) => document.body.append(String(host));',
    ],
  ])("%s may use what it is given", (folder, text) => {
    expect(complaints(folder, text)).toEqual([]);
  });

  it.each([
    ["core", 'import { scalar } from "../functions/cells"; export const a = scalar;', "not listed"],
    ["core", 'import type { Sheet } from "../sheet/sheet"; export type A = Sheet;', "not listed"],
    ["core", "export const a = document.title;", "document"],
    ["core", "export const a = Excel.run;", "Excel"],
    ["core", "export const a = CustomFunctions.Error;", "CustomFunctions"],
    ["core", "export const a = process.env;", "process"],
    ["functions", "export const a = document.title;", "document"],
    ["runsheet", 'import type { Host } from "../host/host"; export type A = Host;', "not listed"],
    ["runsheet", "export const a = document.title;", "document"],
    ["runsheet/tables", 'import { makeRun } from "../plan/makeRun"; export const a = makeRun;', "not listed"],
    ["runsheet/stock", 'import { makeRun } from "../plan/makeRun"; export const a = makeRun;', "not listed"],
    ["runsheet/plan", 'import { AT } from "../sheet/layout"; export const a = AT;', "not listed"],
    ["runsheet/sheet", 'import { readBack } from "../record/readBack"; export const a = readBack;', "not listed"],
    ["file", 'import type { Host } from "../host/host"; export type A = Host;', "not listed"],
    ["file", 'import { scalar } from "../functions/cells"; export const a = scalar;', "not listed"],
    ["file", "export const a = document.title;", "document"],
    ["engine", 'import { UniverHost } from "../host/univer/adapter"; export const a = UniverHost;', "not listed"],
    ["engine", "export const a = document.title;", "document"],
    ["sheet", 'import type { Book } from "../file/book"; export type A = Book;', "not listed"],
    ["pane", 'import { UniverHost } from "../host/univer/adapter"; export const a = UniverHost;', "not listed"],
    ["pane", 'import { ExcelHost } from "../host/excel/adapter"; export const a = ExcelHost;', "not listed"],
    ["pane", "export const a = Excel.run;", "Excel"],
  ])("%s may not: %s", (folder, text, word) => {
    expect(complaints(folder, text).join("\n")).toContain(word);
  });
});
