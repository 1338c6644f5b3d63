import type { Injector } from "@univerjs/core";
import { BaseDataValidator } from "@univerjs/preset-sheets-data-validation";
import { expect, it, vi } from "vitest";
import { headRefusals } from "../../../src/host/univer/editing/refusals";

// Its drawing part, which comes along, asks for this as it loads; nothing is drawn.
vi.hoisted(() => vi.stubGlobal("Path2D", class {}));

it("heads a refusal as the check of the file says, and every other dialog as it was", () => {
  const shown: unknown[] = [];
  const dialogs = { open: (options: { title: unknown }) => shown.push(options.title) };
  headRefusals({ get: () => dialogs } as unknown as Injector);
  const open = (id: string) => dialogs.open({ id, title: { title: "Theirs" } } as never);
  const ask = (rule: object) =>
    BaseDataValidator.prototype.getRuleFinalError.call(
      { generateRuleErrorMessage: () => "wrong" },
      { showErrorMessage: true, ...rule } as never,
      {} as never,
    );
  expect(ask({ error: "open or done", errorTitle: "State" })).toBe("open or done");
  open("reject-input-dialog");
  open("another");
  expect(ask({ errorTitle: "State", showErrorMessage: false })).toBe("wrong");
  open("reject-input-dialog");
  ask({ error: "open or done" });
  open("reject-input-dialog");
  expect(shown).toEqual([{ title: "State" }, { title: "Theirs" }, { title: "Theirs" }, { title: "Theirs" }]);
});
