// @vitest-environment happy-dom
import { act } from "react";
import { createRoot } from "react-dom/client";
import { expect, it } from "vitest";
import type { Remarks } from "../../src/host/host";
import { Pane } from "../../src/pane/Pane";
import { FakeHost } from "./fakeHost";

Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });

/** A spreadsheet program that says something by itself. */
class TalkingHost extends FakeHost {
  say: (remarks: Remarks) => void = () => {};

  onRemarks(callback: (remarks: Remarks) => void): () => void {
    this.say = callback;
    callback({ waiting: undefined, doubts: [] });
    return () => {
      this.say = () => {};
    };
  }
}

it("shows what the spreadsheet program says by itself, as long as it does, in places that are read out", async () => {
  const host = new TalkingHost({});
  const element = document.body.appendChild(document.createElement("div"));
  const root = createRoot(element);
  const said = () => [...element.querySelectorAll("[aria-live=polite]")].map(({ textContent }) => textContent);
  await act(async () => root.render(<Pane host={host} />));
  expect(said()).toEqual(["", ""]);
  await act(async () => host.say({ waiting: "Waiting for Excel.", doubts: ["Days count from 1904."] }));
  expect(said()).toEqual(["Days count from 1904.", "Waiting for Excel."]);
  await act(async () => host.say({ waiting: undefined, doubts: [] }));
  expect(said()).toEqual(["", ""]);
  await act(async () => root.unmount());
  element.remove();
});
