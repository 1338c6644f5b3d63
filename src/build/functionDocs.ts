import { readdirSync, readFileSync } from "node:fs";
import ts from "typescript";

/** What the docstring of a spreadsheet function says. Help pages, and the test that runs the examples, read this. */
export interface FunctionDoc {
  readonly id: string;
  /** The file it is declared in, without its ending: `fill`, `scent`, ... */
  readonly part: string;
  readonly purpose: string;
  readonly parameters: readonly { readonly name: string; readonly text: string; readonly optional: boolean }[];
  readonly returns: string;
  readonly examples: readonly Example[];
  readonly source: string;
}

/** A formula and what it gives: rows of cells, as the docstring writes them (`1 | "Tin" ; 2 | "Jar"`). */
export interface Example {
  readonly formula: string;
  readonly result: readonly (readonly (string | number)[])[];
}

const FOLDER = new URL("../functions/", import.meta.url);

/** The docs of every spreadsheet function, in the order of their files and places. */
export function functionDocs(): FunctionDoc[] {
  const files = readdirSync(FOLDER).filter((name) => name.endsWith(".ts"));
  return files.flatMap((file) => {
    const source = ts.createSourceFile(file, readFileSync(new URL(file, FOLDER), "utf8"), ts.ScriptTarget.ES2022, true);
    return source.statements.flatMap((statement) => {
      if (!ts.isFunctionDeclaration(statement)) return [];
      const tags = ts.getJSDocTags(statement);
      const textOf = (name: string) =>
        tags.filter((tag) => tag.tagName.text === name).map((tag) => ts.getTextOfJSDocComment(tag.comment) ?? "");
      const id = textOf("customfunction")[0];
      if (id === undefined) return [];
      const comment = ts.getJSDocCommentsAndTags(statement).find(ts.isJSDoc)?.comment;
      return [
        {
          id,
          part: file.replace(/\.ts$/, ""),
          purpose: ts.getTextOfJSDocComment(comment) ?? "",
          parameters: statement.parameters.map((parameter) => ({
            name: parameter.name.getText(),
            text: ts.getTextOfJSDocComment(ts.getJSDocParameterTags(parameter)[0]?.comment) ?? "",
            optional: parameter.questionToken !== undefined,
          })),
          returns: textOf("returns")[0] ?? "",
          examples: textOf("example").map(exampleOf),
          source: textOf("source")[0] ?? "",
        },
      ];
    });
  });
}

function exampleOf(text: string): Example {
  const [formula, result] = text.split(" gives ");
  if (formula === undefined || result === undefined) throw new Error(`An example needs "gives": ${text}`);
  const cellOf = (cell: string) => (cell.startsWith('"') ? cell.slice(1, -1) : Number(cell));
  return {
    formula,
    result: splitOutside(result, ";").map((row) => splitOutside(row, "|").map(cellOf)),
  };
}

/** Splits at a sign that stands outside quotation marks. */
function splitOutside(text: string, sign: string): string[] {
  const parts = text.match(new RegExp(`(?:"[^"]*"|[^"${sign}])+`, "g")) ?? [];
  return parts.map((part) => part.trim());
}
