import { existsSync, readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import * as engine from "@univerjs/engine-formula";
import { OfficeAddinManifest } from "office-addin-manifest";
import { describe, expect, it } from "vitest";
import { dist } from "./dist";
import { problemsOf } from "./manifest/check";

const file = fileURLToPath(new URL("manifest.xml", dist));
const manifest = readFileSync(file, "utf8");

const fileOf = (path: string): Uint8Array | undefined => {
  const url = new URL(path, dist);
  return existsSync(url) ? readFileSync(url) : undefined;
};

describe("the built manifest", () => {
  it("keeps every rule", () => {
    expect(problemsOf(manifest, fileOf)).toEqual([]);
  });

  it("comes with no script that no page, no manifest and no other script asks for", () => {
    const text = (name: string) => readFileSync(new URL(name, dist), "utf8");
    const asking = ["manifest.xml", "index.html", "pane.html"].map(text);
    const scripts = readdirSync(dist).filter((name) => name.endsWith(".js"));
    // A script has the names of the parts that it loads later, and the numbers of those that it needs at once or that
    // others share.
    const isAskedFor = (script: string) => {
      const name = script.replace(/\.js$/, "");
      const others = scripts.filter((other) => other !== script).map(text);
      return [...asking, ...others].some((other) =>
        [script, `"${name}"`, `[${name}]`, `.e(${name})`].some((is) => other.includes(is)),
      );
    };
    expect(scripts.filter((script) => !isAskedFor(script))).toEqual([]);
    expect(scripts).not.toEqual([]);
  });

  it("is read by Microsoft's own tool", async () => {
    expect(await OfficeAddinManifest.readManifestFile(file)).toMatchObject({
      id: expect.stringMatching(/^[0-9a-f-]{36}$/),
      version: "1.0.0.0",
      displayName: "Pourwright",
      providerName: "Pourwright",
      hosts: ["Workbook"],
      officeAppType: "TaskPaneApp",
      permissions: "ReadWriteDocument",
      supportUrl: expect.stringMatching(/\/help\/index\.html$/),
      defaultSettings: { sourceLocation: expect.stringMatching(/\/pane\.html$/) },
    });
  });
});

/** The manifest with one thing changed; the change must be there to be made. */
function changed(from: string | RegExp, to: string): string {
  const after = manifest.replace(from, to);
  expect(after).not.toBe(manifest);
  return after;
}

/** Takes an element out of its place and puts it behind another. */
function moved(element: RegExp, behind: RegExp): string {
  const [text = ""] = element.exec(manifest) ?? [];
  expect(text).not.toBe("");
  const after = manifest.replace(text, "").replace(behind, (end) => `${end}${text}`);
  expect(after.length).toBe(manifest.length);
  return after;
}

describe("a broken manifest is found", () => {
  it.each<[string, () => string, string]>([
    ["a lost resource", () => changed(/<bt:Url id="Pane.Url".*\/>/, ""), "Runtime finds no Pane.Url among the Urls"],
    ["a lost string", () => changed(/<bt:String id="RunSheet.Label".*\/>/, ""), "Label finds no RunSheet.Label"],
    [
      "a misspelt resid",
      () => changed('Label resid="Group.Label"', 'Label resid="Group.Lable"'),
      "Label finds no Group.Lable",
    ],
    [
      "a resource of the wrong kind",
      () => changed('Title resid="GetStarted.Title"', 'Title resid="GetStarted.Description"'),
      "among the ShortStrings",
    ],
    [
      "a resource nobody uses",
      () => changed("<bt:Urls>", '<bt:Urls><bt:Url id="Spare" DefaultValue="https://localhost:3000/pane.html"/>'),
      "nothing uses the resource Spare",
    ],
    [
      "an id used twice",
      () => changed('<bt:Url id="Help.Url"', '<bt:Url id="Pane.Url"'),
      "the id Pane.Url is there twice",
    ],
    [
      "elements out of order",
      () => moved(/<Version>.*<\/Version>/, /<\/ProviderName>/),
      "Version comes too late in OfficeApp",
    ],
    [
      "Runtimes behind the form factors",
      () => moved(/<Runtimes>[\s\S]*<\/Runtimes>/, /<\/DesktopFormFactor>/),
      "Runtimes comes too late in Host",
    ],
    [
      "Icon before Supertip",
      () => moved(/<Supertip>[\s\S]*?<\/Supertip>/, /<\/Icon>(?=\s*<Action)/),
      "Supertip comes too late in Control",
    ],
    [
      "Requirements before Hosts",
      () => moved(/<Hosts>\s*<Host Name[\s\S]*?<\/Hosts>/, /<\/Requirements>/),
      "Hosts comes too late in OfficeApp",
    ],
    ["a missing element", () => changed(/<Permissions>.*<\/Permissions>/, ""), "OfficeApp lacks Permissions"],
    [
      "an unknown element",
      () => changed("<GetStarted>", "<Welcome/><GetStarted>"),
      "Welcome has no place in DesktopFormFactor",
    ],
    [
      "a TaskpaneId twice",
      () => changed(/(<Action[^>]*>)/, "$1<TaskpaneId>a</TaskpaneId><TaskpaneId>b</TaskpaneId>"),
      "more than one TaskpaneId",
    ],
    [
      "a name that is too long",
      () => changed('DisplayName DefaultValue="', `DisplayName DefaultValue="${"x".repeat(125)}`),
      "DisplayName  has 135 characters, not 1 to 125",
    ],
    [
      "a description that is too long",
      () => changed(/(id="GetStarted.Description" DefaultValue=")/, `$1${"x".repeat(250)}`),
      "not 1 to 250",
    ],
    ["an empty string", () => changed(/(id="Group.Label" DefaultValue=")[^"]*/, "$1"), "Group.Label has 0 characters"],
    ["an id that is too long", () => manifest.replaceAll("Pane.Url", "P".repeat(33)), "is too long"],
    [
      "an address without https",
      () => changed("https://localhost:3000/pane.html", "http://localhost:3000/pane.html"),
      "is not https",
    ],
    [
      "an address elsewhere",
      () => changed(/(id="Help.Url" DefaultValue=")https:\/\/[^/]*/, "$1https://example.test"),
      "is elsewhere than the pane",
    ],
    [
      "a file that is not built",
      () => changed("/functions.json", "/function.json"),
      "function.json is not in the built site",
    ],
    [
      "an icon of another size",
      () => changed('size="16" resid="Icon.16"', 'size="16" resid="Icon.32"'),
      "is not 16 pixels square but 32,32",
    ],
    [
      "a ribbon icon that is lost",
      () => changed('<bt:Image size="80" resid="Icon.80" />', ""),
      "an Icon lacks size 80",
    ],
    ["an Id that is no GUID", () => changed(/<Id>../, "<Id>xx"), "Id is no GUID"],
    [
      "another page for the functions",
      () => changed(/(<Page>\s*<SourceLocation resid=")Pane.Url/, "$1Help.Url"),
      "SourceLocation in Page is not the page of the Runtime",
    ],
    ["a short runtime", () => changed(' lifetime="long"', ""), "the Runtime is not long"],
    [
      "a requirement that is lost",
      () => changed(/<Set Name="SharedRuntime".*\/>/, ""),
      "SharedRuntime 1.1 is not required",
    ],
    [
      "a wrong namespace",
      () => changed("office/taskpaneappversionoverrides", "office/mailappversionoverrides"),
      "wrong namespace",
    ],
    ["a group without an id", () => changed('<Group id="Pourwright.Group">', "<Group>"), "Group has no id"],
    ["a misspelt attribute", () => changed('<Runtime resid="', '<Runtime resId="'), "an attribute resId of no meaning"],
    [
      "a name in the wrong place",
      () => changed(/<DisplayName DefaultValue="(.*?)" \/>/, "<DisplayName>$1</DisplayName>"),
      "DisplayName has no DefaultValue",
    ],
    [
      "a program that there is not",
      () => changed('<Host Name="Workbook"', '<Host Name="Workbok"'),
      "Host has a wrong Name",
    ],
    ["a version that is none", () => changed('MinVersion="1.9"', 'MinVersion="1,9"'), "Set has a wrong MinVersion"],
    ["an icon of no known size", () => changed('size="64" resid="Icon.64"', 'size="63" resid="Icon.64"'), "wrong size"],
    ["a button of no known type", () => changed('Control xsi:type="Button"', 'Control xsi:type="Buton"'), "wrong type"],
    ["text that is no XML", () => changed("</VersionOverrides>", ""), "rror"],
  ])("%s", (_, broken, words) => {
    expect(problemsOf(broken(), fileOf).join("\n")).toContain(words);
  });
});

/** Excel's rules for the ids of functions: its page "Custom functions naming and localization". */
function idProblems(id: string): string[] {
  const rules: [boolean, string][] = [
    [/^[A-Z][A-Z0-9]{2,63}$/.test(id), "is not 3 to 64 letters and digits"],
    [!/^[A-Z]{1,3}\d{1,7}$/.test(id) && !/^R\d+C\d+$/.test(id), "is a cell's address"],
    [!BUILT_IN.has(id), "is a function of Excel"],
  ];
  return rules.filter(([kept]) => !kept).map(([, problem]) => `${id} ${problem}`);
}

/** The built-in functions as the formula engine of another spreadsheet lists them. */
const BUILT_IN = new Set(
  Object.entries(engine)
    .filter(([name]) => name.startsWith("FUNCTION_NAMES_"))
    .flatMap(([, names]) => Object.values(names as unknown as Record<string, string>)),
);

describe("the functions' ids", () => {
  const folder = new URL("../src/functions/", import.meta.url);
  const declared = readdirSync(folder)
    .filter((name) => name.endsWith(".ts"))
    .flatMap((name) => [...readFileSync(new URL(name, folder), "utf8").matchAll(/@customfunction\s+(\S+)/g)])
    .map(([, id]) => id as string);
  const built = (
    JSON.parse(readFileSync(new URL("functions.json", dist), "utf8")) as { functions: { id: string; name: string }[] }
  ).functions;

  it("are Excel's kind of ids, and the names too", () => {
    expect(
      built.flatMap(({ id, name }) => [...idProblems(id), ...(name === id ? [] : [`${id} is named ${name}`])]),
    ).toEqual([]);
  });

  it("are unique in all files together, and all built", () => {
    expect(declared.filter((id, i) => declared.indexOf(id) !== i)).toEqual([]);
    expect(built.map(({ id }) => id).sort()).toEqual([...declared].sort());
  });

  it.each(["WAX100", "R1C1", "AB", "WAX.PART", "WAX_PART", "1WAX", "SUM", "XLOOKUP", "W".repeat(65)])(
    "%s would be found",
    (id) => {
      expect(idProblems(id)).not.toEqual([]);
    },
  );
});
