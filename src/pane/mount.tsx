import { createRoot } from "react-dom/client";
import type { Host } from "../host/host";
import { Pane } from "./Pane";
import "./pane.css";

/** Puts the pane into an element of the page; gives the way to take it out again. */
export function mountPane(element: HTMLElement, host: Host): () => void {
  const root = createRoot(element);
  root.render(<Pane host={host} />);
  return () => root.unmount();
}
