import { type KeyboardEvent, type ReactNode, useRef } from "react";
import { VIEWS, VIEWS_LABEL, type View } from "./words/views";

const ALL = Object.keys(VIEWS) as View[];
const tabOf = (view: View): string => `pane-tab-${view}`;

/** The tabs of the pane's views. One is shown; what is typed in the others stays. */
export function Views(props: {
  view: View;
  onView: (view: View) => void;
  children: Readonly<Record<View, ReactNode>>;
}) {
  const { view, onView, children } = props;
  const tabs = useRef<Partial<Record<View, HTMLButtonElement | null>>>({});
  /** As WAI-ARIA lets tabs be walked: arrows lead round, Home and End to the first and the last. */
  const walk = (event: KeyboardEvent) => {
    const at = ALL.indexOf(view);
    const steps: Readonly<Record<string, number>> = {
      ArrowRight: at + 1,
      ArrowLeft: at - 1 + ALL.length,
      Home: 0,
      End: ALL.length - 1,
    };
    const step = steps[event.key];
    const next = step === undefined ? undefined : ALL[step % ALL.length];
    if (!next) return;
    event.preventDefault();
    onView(next);
    tabs.current[next]?.focus();
  };
  return (
    <>
      <div role="tablist" aria-label={VIEWS_LABEL} className="views" onKeyDown={walk}>
        {ALL.map((one) => (
          <button
            key={one}
            type="button"
            role="tab"
            id={tabOf(one)}
            aria-selected={one === view}
            aria-controls={`pane-view-${one}`}
            tabIndex={one === view ? 0 : -1}
            ref={(tab) => {
              tabs.current[one] = tab;
            }}
            onClick={() => onView(one)}
          >
            {VIEWS[one]}
          </button>
        ))}
      </div>
      {ALL.map((one) => (
        <div key={one} role="tabpanel" id={`pane-view-${one}`} aria-labelledby={tabOf(one)} hidden={one !== view}>
          {children[one]}
        </div>
      ))}
    </>
  );
}
