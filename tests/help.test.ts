import { readdirSync, readFileSync } from "node:fs";
import { Window } from "happy-dom";
import { describe, expect, it } from "vitest";
import { BURN_CAUTIONS } from "../src/runsheet/burnCautions";
import { CAUTIONS } from "../src/runsheet/cautions";
import { wordsOf } from "../src/runsheet/tables/headings/field";
import { TABLE_TYPES } from "../src/runsheet/tables/registry";
import type { TableType } from "../src/runsheet/tables/tableType";
import { dist } from "./dist";

const help = new URL("help/", dist);
const read = (name: string) => {
  const { document } = new Window();
  document.write(readFileSync(new URL(name, help), "utf8"));
  return document;
};
const textOf = (part: { textContent: string } | null | undefined) => part?.textContent.trim() ?? "";

describe("the help page of the run sheet", () => {
  const page = read("run-sheet.html");
  const tables = [...page.querySelectorAll("h3")].map((heading) => {
    const parts = [heading.nextElementSibling, heading.nextElementSibling?.nextElementSibling];
    const rows = [...(parts[1]?.nextElementSibling?.querySelectorAll("tbody tr") ?? [])];
    return {
      name: textOf(heading),
      needs: textOf(parts[1]),
      columns: rows.map((row) => [textOf(row.querySelector("th")), textOf(row.querySelector("td"))]),
    };
  });

  it("comes first in the index", () => {
    const first = read("index.html").querySelector("main a");
    expect(first?.getAttribute("href")).toBe("run-sheet.html");
    expect(textOf(first)).toBe(textOf(page.querySelector("h1")));
  });

  it("names every table, and for each column the words of its headings", () => {
    expect(tables.map(({ name, columns }) => ({ name, columns }))).toEqual(
      Object.values<TableType>(TABLE_TYPES)
        // What the tables of before are called stands with the table of items.
        .filter(({ isFormer }) => !isFormer)
        .map(({ name, fields }) => ({
          name,
          columns: Object.values(fields).map((field) => [
            field.name,
            wordsOf(field)
              .map(([word]) => word)
              .join(", "),
          ]),
        })),
    );
  });

  it("names the columns that a table needs", () => {
    expect(tables[0]?.needs).toBe("Needs: Vessel; Quantity; Fill weight or Water weight.");
    expect(tables.find(({ name }) => name === "Moves")?.needs).toBe("Needs: Date; Item; Lot; Change.");
  });

  it("calls what it speaks of as the pane and the sheet do", () => {
    const sources = ["../src/pane/", "../src/runsheet/"]
      .map((folder) => new URL(folder, import.meta.url))
      .flatMap((folder) =>
        readdirSync(folder, { recursive: true, encoding: "utf8" }).map((file) => new URL(file, folder)),
      )
      .flatMap((file) => (/\.tsx?$/.test(file.pathname) ? [readFileSync(file, "utf8")] : []))
      .join("\n");
    const named = [...page.querySelectorAll("b")].map(textOf);
    expect(named.length).toBeGreaterThan(20);
    for (const words of named) expect(sources).toContain(words);
  });

  it("gives the cautions, and leads only to pages that are there", () => {
    for (const caution of [...CAUTIONS, ...Object.values(BURN_CAUTIONS)]) {
      expect(textOf(page.body)).toContain(caution);
    }
    const pages = readdirSync(help);
    for (const link of page.querySelectorAll("a")) expect(pages).toContain(link.getAttribute("href"));
  });
});
