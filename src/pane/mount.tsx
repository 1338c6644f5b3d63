import { Component, type ReactNode } from "react";
import { createRoot } from "react-dom/client";
import type { Host } from "../host/host";
import { Pane } from "./Pane";
import { planAside } from "./planAside";
import { FAILED } from "./words/opening";
import "./pane.css";

/** One for the page: the pane comes and goes with the workbooks. */
const planner = planAside();

/** Puts the pane into an element of the page; gives the way to take it out again. */
export function mountPane(element: HTMLElement, host: Host): () => void {
  const root = createRoot(element);
  root.render(
    <Fallback>
      <Pane host={host} planner={planner} />
    </Fallback>,
  );
  return () => root.unmount();
}

/** Should the pane itself fail, words and a way on stand in its place, and not nothing. */
class Fallback extends Component<{ children: ReactNode }, { failed?: unknown }> {
  override state: { failed?: unknown } = {};

  static getDerivedStateFromError(failed: unknown) {
    return { failed };
  }

  override render() {
    const { failed } = this.state;
    if (failed === undefined) return this.props.children;
    return (
      <div className="pourwright-pane">
        <p role="alert" className="wrong">
          {FAILED.says(failed instanceof Error ? failed.message : String(failed))}
        </p>
        <p>{FAILED.unharmed}</p>
        <button type="button" className="main" onClick={() => this.setState({ failed: undefined })}>
          {FAILED.again}
        </button>
      </div>
    );
  }
}
