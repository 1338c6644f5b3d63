import { type AnyNode, type Property, parse } from "acorn";
import type { Compiler, default as webpackModule } from "webpack";

/** Tables of modules stand this near to the outermost code. */
const DEPTH = 12;

/**
 * Puts each module's function into parentheses. All of them are called as soon as their file has come, and by the
 * parentheses a browser knows it: it reads a module once, while the file comes, not a second time when it is called.
 */
export function eagerModules(webpack: typeof webpackModule) {
  const { Compilation, sources } = webpack;
  return (compiler: Compiler) => {
    compiler.hooks.thisCompilation.tap("EagerModules", (compilation) => {
      // The minimizer would take the parentheses away again.
      const stage = Compilation.PROCESS_ASSETS_STAGE_OPTIMIZE_SIZE + 1;
      compilation.hooks.processAssets.tap({ name: "EagerModules", stage }, (assets) => {
        for (const { files } of compilation.chunks) {
          for (const file of files) {
            const asset = assets[file];
            if (!asset || !/\.js(\?|$)/.test(file)) continue;
            compilation.updateAsset(file, new sources.RawSource(inParentheses(asset.source().toString())));
          }
        }
      });
    });
  };
}

/** The same script with its modules' functions in parentheses. */
export function inParentheses(script: string): string {
  let done = "";
  let from = 0;
  for (const { method, key, value } of modulesOf(parse(script, { ecmaVersion: "latest" }), DEPTH)) {
    // A method has no function of its own to put into them.
    done += method ? `${script.slice(from, key.end)}:(function` : `${script.slice(from, value.start)}(`;
    done += `${script.slice(value.start, value.end)})`;
    from = value.end;
  }
  return done + script.slice(from);
}

/** The entries of objects that hold nothing but functions by number, in order. */
function modulesOf(node: AnyNode, depth: number): Property[] {
  if (node.type === "ObjectExpression" && node.properties.length > 0 && node.properties.every(isModule)) {
    return node.properties as Property[];
  }
  if (depth === 0) return [];
  const within = Object.values(node).flat().filter(isNode);
  return within.flatMap((inner) => modulesOf(inner, depth - 1));
}

const isModule = (entry: AnyNode) =>
  entry.type === "Property" &&
  entry.key.type === "Literal" &&
  typeof entry.key.value === "number" &&
  /Function/.test(entry.value.type) &&
  !("async" in entry.value && entry.value.async);

const isNode = (part: unknown): part is AnyNode => typeof part === "object" && part !== null && "type" in part;
