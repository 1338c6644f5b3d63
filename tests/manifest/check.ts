import { DOMParser, type Element, type Node } from "@xmldom/xmldom";
import {
  ATTRIBUTES,
  CHILDREN,
  GUID,
  ICON_SIZES,
  LONGEST,
  LONGEST_ID,
  NAMESPACES,
  RIBBON_SIZES,
  SECTION_OF,
  VERSION,
} from "./rules";

/** A file of the built site, or undefined. */
export type FileOf = (path: string) => Uint8Array | undefined;

/** What is wrong with a manifest, in words; nothing when it is right. */
export function problemsOf(xml: string, fileOf: FileOf): string[] {
  const problems: string[] = [];
  const parser = new DOMParser({
    onError: (level, message) => {
      problems.push(`${level}: ${message}`);
    },
  });
  let root: Element | null;
  try {
    root = parser.parseFromString(xml, "text/xml").documentElement;
  } catch (fault) {
    return [String(fault)];
  }
  if (!root) return ["no manifest"];
  const all = [root, ...descendants(root)];
  return [
    ...problems,
    ...all.flatMap(orderProblems),
    ...all.flatMap(attributeProblems),
    ...all.flatMap(namespaceProblems),
    ...lengthProblems(all),
    ...resourceProblems(all),
    ...urlProblems(all, fileOf),
    ...iconProblems(all, fileOf),
    ...identityProblems(all),
    ...runtimeProblems(all),
  ];
}

const children = (element: Element): Element[] =>
  Array.from(element.childNodes).filter((node): node is Element => node.nodeType === node.ELEMENT_NODE);
const descendants = (element: Element): Element[] => children(element).flatMap((one) => [one, ...descendants(one)]);
const nameOf = (node: Node | null | undefined): string => (node as Element | undefined)?.localName ?? "";
const parentOf = (node: Node | null): string => nameOf(node?.parentNode);
const typeOf = (element: Element): string => element.getAttributeNS(NAMESPACES.instance, "type") ?? "";
const named = (all: readonly Element[], name: string): Element[] => all.filter((one) => nameOf(one) === name);
const contentOf = (element: Element): string => element.getAttribute("DefaultValue") ?? element.textContent ?? "";
const isResource = (element: Element): boolean =>
  parentOf(element.parentNode) === "Resources" && element.hasAttribute("id");

function orderProblems(element: Element): string[] {
  const name = nameOf(element);
  const rule = CHILDREN[`${name}:${typeOf(element)}`] ?? CHILDREN[`${parentOf(element)}/${name}`] ?? CHILDREN[name];
  const found = children(element).map(nameOf);
  if (rule === undefined) return found.length === 0 ? [] : [`${name} is not known to have children`];
  const steps = rule.split(" ").map((step) => {
    const [, child = "", marks = ""] = /^(\w+)(.*)$/.exec(step) ?? [];
    return { child, must: marks.includes("!"), often: marks.includes("*") };
  });
  const places = found.map((child) => steps.findIndex((step) => step.child === child));
  return [
    ...found.filter((_, i) => places[i] === -1).map((child) => `${child} has no place in ${name}`),
    ...found
      .filter((_, i) => i > 0 && (places[i] as number) < (places[i - 1] as number))
      .map((child) => `${child} comes too late in ${name}`),
    ...steps.filter(({ child, must }) => must && !found.includes(child)).map(({ child }) => `${name} lacks ${child}`),
    ...steps
      .filter(({ child, often }) => !often && found.filter((one) => one === child).length > 1)
      .map(({ child }) => `${name} has more than one ${child}`),
  ];
}

function attributeProblems(element: Element): string[] {
  const name = nameOf(element);
  const parent = `${parentOf(element)}/${name}`;
  const rule = ATTRIBUTES[`${parentOf(element.parentNode)}/${parent}`] ?? ATTRIBUTES[parent] ?? ATTRIBUTES[name] ?? {};
  const there = new Map(
    Array.from(element.attributes)
      .filter(({ prefix, nodeName }) => prefix !== "xmlns" && nodeName !== "xmlns")
      .map(({ localName, value }) => [localName ?? "", value]),
  );
  const known = Object.entries(rule).map(([key, pattern]) => ({
    key: key.replace("?", ""),
    pattern,
    may: key.endsWith("?"),
  }));
  return [
    ...[...there.keys()]
      .filter((key) => !known.some((one) => one.key === key))
      .map((key) => `${name} has an attribute ${key} of no meaning`),
    ...known
      .filter(({ key, pattern, may }) => !(there.has(key) ? pattern.test(there.get(key) ?? "") : may))
      .map(({ key }) => `${name} has ${there.has(key) ? "a wrong" : "no"} ${key}`),
  ];
}

function namespaceProblems(element: Element): string[] {
  const inOverrides = element.namespaceURI === NAMESPACES.overrides;
  const basic = ["Image", "Images", "Url", "Urls", "String", "ShortStrings", "LongStrings"].includes(nameOf(element));
  const wanted = basic
    ? NAMESPACES.basic
    : isBelow(element, "VersionOverrides")
      ? NAMESPACES.overrides
      : NAMESPACES.app;
  return element.namespaceURI === wanted || (inOverrides && nameOf(element) === "VersionOverrides")
    ? []
    : [`${nameOf(element)} is in the wrong namespace`];
}

function isBelow(node: Node | null, name: string): boolean {
  return node !== null && (parentOf(node) === name || isBelow(node.parentNode, name));
}

function lengthProblems(all: readonly Element[]): string[] {
  const texts = all.filter(
    (one) => !one.hasAttribute("resid") && (isResource(one) || nameOf(one) in LONGEST) && children(one).length === 0,
  );
  const long = texts.flatMap((one) => {
    const limit = LONGEST[isResource(one) ? parentOf(one) : nameOf(one)] ?? 0;
    const { length } = contentOf(one);
    return length >= 1 && length <= limit
      ? []
      : [`${nameOf(one)} ${one.getAttribute("id") ?? ""} has ${length} characters, not 1 to ${limit}`];
  });
  const ids = all
    .flatMap((one) => ["id", "resid"].map((name) => one.getAttribute(name) ?? ""))
    .filter((id) => id !== "");
  return [...long, ...ids.filter((id) => id.length > LONGEST_ID).map((id) => `the id ${id} is too long`)];
}

function resourceProblems(all: readonly Element[]): string[] {
  const resources = all.filter(isResource);
  const users = all.filter((one) => one.hasAttribute("resid"));
  const ids = all.map((one) => one.getAttribute("id")).filter((id) => id !== null);
  const lost = users.filter(
    (user) =>
      !resources.some(
        (one) => one.getAttribute("id") === user.getAttribute("resid") && parentOf(one) === SECTION_OF[nameOf(user)],
      ),
  );
  const unused = resources.filter(
    (one) => !users.some((user) => user.getAttribute("resid") === one.getAttribute("id")),
  );
  return [
    ...lost.map(
      (user) => `${nameOf(user)} finds no ${user.getAttribute("resid")} among the ${SECTION_OF[nameOf(user)]}`,
    ),
    ...unused.map((one) => `nothing uses the resource ${one.getAttribute("id")}`),
    ...ids.filter((id, i) => ids.indexOf(id) !== i).map((id) => `the id ${id} is there twice`),
  ];
}

const urlsOf = (all: readonly Element[]): string[] => {
  const names = ["IconUrl", "HighResolutionIconUrl", "SupportUrl", "SourceLocation", "Url"];
  const direct = all.filter((one) => names.includes(nameOf(one)) || (nameOf(one) === "Image" && isResource(one)));
  return direct.filter((one) => !one.hasAttribute("resid")).map(contentOf);
};

function urlProblems(all: readonly Element[], fileOf: FileOf): string[] {
  const [home] = named(all, "DefaultSettings").flatMap(children).map(contentOf);
  const origin = home && URL.canParse(home) ? new URL(home).origin : "";
  return urlsOf(all).flatMap((url) => {
    if (!URL.canParse(url) || new URL(url).protocol !== "https:") return [`${url} is not https`];
    if (new URL(url).origin !== origin) return [`${url} is elsewhere than the pane`];
    return fileOf(new URL(url).pathname.slice(1)) ? [] : [`${url} is not in the built site`];
  });
}

function iconProblems(all: readonly Element[], fileOf: FileOf): string[] {
  const wrong = (url: string, size: number): string[] => {
    const image = URL.canParse(url) ? fileOf(new URL(url).pathname.slice(1)) : undefined;
    const found = image && pngSize(image);
    return found && found[0] === size && found[1] === size ? [] : [`${url} is not ${size} pixels square but ${found}`];
  };
  const own = Object.entries(ICON_SIZES).flatMap(([name, size]) => {
    const [icon] = named(all, name);
    return icon ? wrong(contentOf(icon), size) : [`there is no ${name}`];
  });
  const urls = new Map(all.filter(isResource).map((one) => [one.getAttribute("id"), contentOf(one)]));
  const ribbon = named(all, "Icon").flatMap((icon) => {
    const images = children(icon);
    const sizes = images.map((image) => Number(image.getAttribute("size")));
    return [
      ...RIBBON_SIZES.filter((size) => !sizes.includes(size)).map((size) => `an Icon lacks size ${size}`),
      ...images.flatMap((image, i) => wrong(urls.get(image.getAttribute("resid")) ?? "", sizes[i] ?? 0)),
    ];
  });
  return [...own, ...ribbon];
}

/** Width and height in the header of a PNG file (its specification, 5.2 and 11.2.2). */
function pngSize(image: Uint8Array): [number, number] | undefined {
  const view = new DataView(image.buffer, image.byteOffset, image.byteLength);
  return view.getUint32(0) === 0x89504e47 ? [view.getUint32(16), view.getUint32(20)] : undefined;
}

function identityProblems(all: readonly Element[]): string[] {
  const textOf = (name: string): string => named(all, name)[0]?.textContent ?? "";
  return [
    ...(GUID.test(textOf("Id")) && !/^0+$/.test(textOf("Id").replaceAll("-", "")) ? [] : ["Id is no GUID"]),
    ...(VERSION.test(textOf("Version")) ? [] : ["Version is none"]),
    ...(textOf("DefaultLocale") === "en-US" ? [] : ["DefaultLocale is not en-US"]),
    ...(textOf("Permissions") === "ReadWriteDocument" ? [] : ["Permissions do not let the pane write"]),
    ...(typeOf(all[0] as Element) === "TaskPaneApp" ? [] : ["it is no TaskPaneApp"]),
  ];
}

/** One page for runtime, functions, commands and pane, alive as long as the workbook. */
function runtimeProblems(all: readonly Element[]): string[] {
  const [runtime] = named(all, "Runtime");
  const page = runtime?.getAttribute("resid") ?? "";
  const sharing = [
    ...named(all, "Page").flatMap(children),
    ...named(all, "Action").flatMap(children),
    ...named(all, "FunctionFile"),
  ];
  const sets = named(all, "Set").map((set) => `${set.getAttribute("Name")} ${set.getAttribute("MinVersion")}`);
  return [
    ...(runtime?.getAttribute("lifetime") === "long" ? [] : ["the Runtime is not long"]),
    ...sharing
      .filter((one) => one.getAttribute("resid") !== page)
      .map((one) => `${nameOf(one)} in ${parentOf(one)} is not the page of the Runtime`),
    ...(sharing.length >= 3 ? [] : ["Page, Action and FunctionFile do not all share the Runtime"]),
    ...["SharedRuntime 1.1", "CustomFunctionsRuntime 1.3", "ExcelApi 1.9"]
      .filter((set) => !sets.includes(set))
      .map((set) => `${set} is not required`),
  ];
}
