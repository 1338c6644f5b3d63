import * as whole from "cjk-regex";
import { expect, it } from "vitest";
import { REPLACED } from "../src/build/leftOut";

type Patterns = Record<"letters" | "all" | "punctuations", () => { toRegExp(): RegExp }>;

// Letters that Unicode gained lately are known to only one of the two: they lie beyond.
it("what stands in the place of the tables of East Asian letters knows the same ones", async () => {
  const own: Patterns = await import(
    /* @vite-ignore */ `data:text/javascript,${encodeURIComponent(REPLACED["cjk-regex"] as string)}`
  );
  for (const name of ["letters", "all", "punctuations"] as const) {
    const [theirs, ours] = [(whole as Patterns)[name]().toRegExp(), own[name]().toRegExp()];
    const differ: string[] = [];
    for (let code = 0; code < 0x1b000; code++) {
      if (code >= 0xd800 && code < 0xe000) continue;
      const letter = String.fromCodePoint(code);
      if (theirs.test(letter) !== ours.test(letter)) differ.push(`${name} ${code.toString(16)}`);
    }
    expect(differ).toEqual([]);
  }
});
