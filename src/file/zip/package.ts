import { children, type Element, readTree } from "../xml/tree";
import type { Package } from "./unpack";

export const CONTENT_TYPES = "[Content_Types].xml";

/** That one part refers to another or to an address outside. */
export interface Relationship {
  readonly id: string;
  /** The last word of its type, which is the same in all forms of the standard: `worksheet`, `styles`. */
  readonly kind: string;
  readonly type: string;
  /** The path of a part as the package has it, or an address as it is written. */
  readonly target: string;
  readonly external: boolean;
}

/** Where the relationships of a part stand; of the whole package with "". */
export const relationshipsPath = (part: string): string => part.replace(/([^/]*)$/, "_rels/$1.rels");

/** The part that a reference from another one means: beginning with `/` from the top, else from the other's folder. */
export function resolveTarget(from: string, target: string): string {
  const steps: string[] = target.startsWith("/") ? [] : from.split("/").slice(0, -1);
  for (const step of target.split("/")) {
    if (step === "..") steps.pop();
    else if (step !== "" && step !== ".") steps.push(step);
  }
  return steps.join("/");
}

/** The path of a part as the package writes it: names that differ in upper and lower case only are one name. */
export function findPath(pack: Package, path: string): string | undefined {
  if (pack.parts.has(path)) return path;
  let known = paths.get(pack);
  if (!known) {
    known = new Map([...pack.parts.keys()].map((one) => [one.toLowerCase(), one]));
    paths.set(pack, known);
  }
  return known.get(path.toLowerCase());
}

/** Of each package, its paths by their small letters. */
const paths = new WeakMap<Package, ReadonlyMap<string, string>>();

/** The relationships of a part, those of the whole package with "". */
export function relationships(pack: Package, part: string): Relationship[] {
  const path = findPath(pack, relationshipsPath(part));
  const bytes = path === undefined ? undefined : pack.parts.get(path);
  if (path === undefined || !bytes) return [];
  return children(readTree(path, bytes), "Relationship").map(({ attributes }) => {
    const { Id = "", Type = "", Target = "", TargetMode } = attributes;
    const external = TargetMode === "External";
    const resolved = external ? Target : resolveTarget(part, Target);
    return {
      id: Id,
      kind: Type.slice(Type.lastIndexOf("/") + 1),
      type: Type,
      target: external ? resolved : (findPath(pack, resolved) ?? resolved),
      external,
    };
  });
}

/** What each part says it is, by its path: a content type in lower case; an empty text for one that says nothing. */
export function contentTypes(pack: Package): (path: string) => string {
  const bytes = pack.parts.get(findPath(pack, CONTENT_TYPES) ?? "");
  const listed = bytes ? readTree(CONTENT_TYPES, bytes) : undefined;
  const types = (name: string, key: string): Map<string, string> =>
    new Map(
      children(listed, name).map(({ attributes }: Element) => [
        (attributes[key] ?? "").replace(/^\//, "").toLowerCase(),
        (attributes.ContentType ?? "").toLowerCase(),
      ]),
    );
  const overrides = types("Override", "PartName");
  const defaults = types("Default", "Extension");
  return (path) => {
    const name = path.toLowerCase();
    return overrides.get(name) ?? defaults.get(name.slice(name.lastIndexOf(".") + 1)) ?? "";
  };
}

/** The path of the workbook itself, which the package's own relationships name. */
export const workbookPath = (pack: Package): string | undefined =>
  relationships(pack, "").find(({ kind, external }) => kind === "officeDocument" && !external)?.target;
