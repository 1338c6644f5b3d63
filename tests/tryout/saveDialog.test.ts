// @vitest-environment happy-dom
import { afterEach, describe, expect, it } from "vitest";
import { askBeforeSaving, type Decision } from "../../src/tryout/files/saveDialog";

afterEach(() => document.body.replaceChildren());

/** What is decided while the browser has not yet told that the dialog is closed. */
async function decided(press: (dialog: HTMLDialogElement) => void): Promise<Decision | "nothing"> {
  const answer = askBeforeSaving({
    lost: [{ sheet: null, what: "a chart", consequence: "It is left out." }],
    fileName: null,
  });
  const dialog = document.querySelector("dialog") as HTMLDialogElement;
  dialog.close = () => {};
  press(dialog);
  return Promise.race([answer, Promise.resolve().then(() => "nothing" as const)]);
}

const button = (label: string) => (dialog: HTMLDialogElement) =>
  [...dialog.querySelectorAll("button")].find(({ textContent }) => textContent === label)?.click();

describe("the question before a file is saved", () => {
  it.each([
    ["Save anyway", "another"],
    ["Cancel", "cancel"],
  ])("is answered by %s as it is pressed: a press that follows at once is not lost", async (label, answer) => {
    expect(await decided(button(label))).toBe(answer);
  });

  it("is answered by Escape as it is pressed", async () => {
    const pressed = new KeyboardEvent("keydown", { key: "Escape", bubbles: true });
    expect(await decided((dialog) => dialog.dispatchEvent(pressed))).toBe("cancel");
  });

  it("is left unanswered by a press beside its buttons", async () => {
    expect(await decided((dialog) => dialog.querySelector<HTMLElement>(".files-choices")?.click())).toBe("nothing");
  });
});
