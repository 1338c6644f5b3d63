import { describe, expect, it } from "vitest";
import type { Book } from "../../src/file/book";
import { emptyBook, emptySheet } from "../../src/file/emptyBook";
import { toUniver } from "../../src/host/univer/file/toUniver";
import { type Answer, saveTask } from "../../src/tryout/files/fileTasks";
import { SavedWords } from "../../src/tryout/files/savedWords";

/** Whether a file with this formula is known to call our functions. */
function callsOurs(formula: string): boolean | undefined {
  const cells = [{ column: 0, value: 215, formula, style: 0 }];
  const book: Book = { ...emptyBook(), sheets: [{ ...emptySheet("1", "Jars"), rows: [{ row: 0, cells }] }] };
  const answers: Answer[] = [];
  saveTask({ original: null, data: toUniver(book, "saved"), worked: {} }, (answer) => answers.push(answer));
  const saved = answers.find((answer) => "saved" in answer);
  return saved?.saved.callsOurs;
}

describe("what is said of a saved file", () => {
  it("is once what its functions show without the add-in, where it has some", () => {
    const words = new SavedWords();
    const [plain, more] = ["Saved jars.xlsx.", /^Saved jars\.xlsx\. For somebody without the add-in: .*#NAME\?/];
    expect(words.of("one", "jars.xlsx", false)).toBe(plain);
    expect(words.of("one", "jars.xlsx", true)).toMatch(more);
    expect(words.of("one", "jars.xlsx", true)).toBe(plain);
    expect(words.of("another", "jars.xlsx", true)).toMatch(more);
  });

  it("is so found out as it is made", () => {
    expect(callsOurs("=POUR.FILLWEIGHT(250,0.86)")).toBe(true);
    expect(callsOurs("=ROUND(250*0.86,0)")).toBe(false);
  });
});
