import { IUndoRedoService, UndoCommand } from "@univerjs/core";
import { describe, expect, it } from "vitest";
import { followEdits } from "../../../src/host/univer/editing/edits";
import { Headless } from "./headless";

describe("an edit whose consequence fails", () => {
  const failing = {
    "cannot be worked out": () => {
      throw new Error("no such table");
    },
    "cannot be done": () => ({ redos: [{ id: "no.such.mutation", params: {} }], undos: [] }),
  };

  it.each(Object.entries(failing))("as it %s is said, and can be taken back all the same", async (_, consequence) => {
    const page = new Headless([{ name: "Sheet", widths: [], cells: [] }]);
    let [done, failed] = [0, 0];
    followEdits(
      page.injector,
      consequence,
      () => done++,
      () => failed++,
    );
    await page.enter(0, 0, [[7]]);
    expect({ done, failed, cell: page.cell(0, 0) }).toEqual({ done: 1, failed: 1, cell: 7 });
    expect(page.injector.get(IUndoRedoService).pitchTopUndoElement()).not.toBeNull();
    await page.run(UndoCommand.id, {});
    expect(page.cell(0, 0)).toBeNull();
  });
});
