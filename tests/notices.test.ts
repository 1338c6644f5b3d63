import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { REPLACED } from "../src/build/leftOut";
import { noticeText } from "../src/build/notices";
import { dist } from "./dist";

const read = (name: string) => readFileSync(new URL(name, dist), "utf8");

/** What stands below the names of a package's group. */
function termsOf(title: RegExp): string {
  const part = notice
    .split(/\n={80}\n(?=[^\n]+ \d+\.)/)
    .find((group) => title.test(group.split("=".repeat(80))[0] ?? ""));
  expect(part, String(title)).toBeDefined();
  return part?.split(`${"=".repeat(80)}\n`)[1] ?? "";
}
const notice = read("notices.txt");

describe("the notice of third-party code", () => {
  /**
   * Packages, and words of their own code by which the built scripts show that they are there. The words were found
   * in the packages' files.
   */
  it.each([
    [
      "react",
      "Cannot update a component while rendering a different component|Minified React error|react.element",
      "MIT",
    ],
    ["react-dom", "react-dom|__reactFiber\\$", "MIT"],
    ["scheduler", "unstable_scheduleCallback", "MIT"],
    ["rxjs", "unsubscribed|ObjectUnsubscribedError", "Apache"],
    ["decimal.js", "\\[DecimalError\\]", "MIT"],
    ["localforage", "_initStorage|INDEXEDDB", "Apache"],
    ["@univerjs/core", "univerjs|UniverInstanceService", "Apache"],
    ["@floating-ui/core", "flip|autoPlacement", "MIT"],
  ])("gives the terms of %s, whose code is in the scripts", (name, words, licence) => {
    const scripts = readdirSync(dist).filter((file) => file.endsWith(".js"));
    expect(scripts.some((file) => new RegExp(words).test(read(file)))).toBe(true);
    const { version } = JSON.parse(
      readFileSync(new URL(`../node_modules/${name}/package.json`, import.meta.url), "utf8"),
    ) as { version: string };
    const title = new RegExp(`^${name.replaceAll(".", "\\.")} ${version.replaceAll(".", "\\.")}$`, "m");
    expect(termsOf(title)).toMatch(
      licence === "MIT" ? /Permission is hereby granted, free of charge/ : /Apache License/,
    );
  });

  it("names no package whose code was left out", () => {
    for (const name of Object.keys(REPLACED)) expect(notice).not.toContain(`\n${name} `);
  });

  it("gives Microsoft's terms for office.js", () => {
    const terms = termsOf(/^@microsoft\/office-js /m);
    const whole = readFileSync(new URL("../node_modules/@microsoft/office-js/LICENSE.md", import.meta.url), "utf8");
    expect(terms).toContain(whole.replaceAll("\r\n", "\n").trim());
  });

  it("is linked from the help and from the pane's page", () => {
    for (const [page, link] of [
      ["help/index.html", "../notices.txt"],
      ["pane.html", "notices.txt"],
    ] as const) {
      expect(read(page)).toMatch(new RegExp(`href="?${link}\\b`));
    }
  });

  const standard = (file: string) => `Text of ${file}\n\nCopyright (c) somebody else\n\nand on.`;
  const one = { title: "a 1.0.0", author: "Ann", licence: "MIT", text: "Terms" };

  it("gives a text that packages share once, below their names", () => {
    const text = noticeText([{ ...one, title: "b 2.0.0" }, one], standard);
    expect(text).toContain("a 1.0.0\nb 2.0.0\n");
    expect(text.split("Terms")).toHaveLength(2);
  });

  it("says so where a package only names its licence, and invents no holder for it", () => {
    const text = noticeText([{ ...one, licence: "Apache-2.0", text: "" }], standard);
    expect(text).toContain("a 1.0.0 by Ann (licence named: Apache-2.0; its usual text)");
    expect(text).toContain("Text of node_modules/typescript/LICENSE.txt");
    expect(text).not.toContain("somebody else");
    // The text it then gives is the licence itself.
    expect(readFileSync(new URL("../node_modules/typescript/LICENSE.txt", import.meta.url), "utf8")).toMatch(
      /^Apache License\s+Version 2\.0, January 2004/,
    );
  });

  it("lets no build pass with a licence whose text is nowhere", () => {
    expect(() => noticeText([{ ...one, licence: "Own", text: "" }], standard)).toThrow(
      "a 1.0.0 comes without the text",
    );
  });
});
