import { UndoCommand } from "@univerjs/core";
import { describe, expect, it } from "vitest";
import { followEdits } from "../../../src/host/univer/editing/edits";
import { EditWords } from "../../../src/host/univer/editing/editWords";
import { Headless } from "./headless";

function page() {
  const headless = new Headless([{ name: "Sheet", widths: [], cells: [] }]);
  const shown = { words: "" };
  const words = new EditWords(headless.injector, (text) => {
    shown.words = text;
  });
  followEdits(
    headless.injector,
    (edit) => {
      if (edit.redoMutations.some(({ params }) => JSON.stringify(params).includes("doubtful"))) words.say("A doubt.");
      return null;
    },
    (edit) => words.done(edit),
  );
  return { headless, shown };
}

describe("what is said of an edit", () => {
  it("goes when that edit is taken back", async () => {
    const { headless, shown } = page();
    await headless.enter(0, 0, [["doubtful"]]);
    expect(shown.words).toBe("A doubt.");
    await headless.run(UndoCommand.id, {});
    expect(shown.words).toBe("");
  });

  it("stays when a later edit is taken back", async () => {
    const { headless, shown } = page();
    await headless.enter(0, 0, [["doubtful"]]);
    await headless.enter(1, 0, [["plain"]]);
    await headless.run(UndoCommand.id, {});
    expect(shown.words).toBe("A doubt.");
    await headless.run(UndoCommand.id, {});
    expect(shown.words).toBe("");
  });
});
