import { type ReactNode, useEffect, useRef, useState } from "react";
import type { Entry } from "./library";
import type { Doing } from "./Workbooks";
import { sizeOf, when, whenApart } from "./when";

interface EntryProps {
  readonly entry: Entry;
  readonly doing: Doing;
  readonly remove: () => Promise<void>;
}

/** A workbook in the list: opened by its name, with what else can be done below. */
export function WorkbookEntry({ entry, doing, remove }: EntryProps) {
  const [mode, setMode] = useState<"plain" | "renaming" | "removing" | "states">("plain");
  const { id, name, openness, size, states } = entry;
  const { library, run, leave } = doing;
  const item = useRef<HTMLLIElement>(null);
  const before = useRef(mode);
  // A question or a field that was answered or left takes the keyboard's focus with it.
  useEffect(() => {
    const isLeft = mode === "plain" && (before.current === "renaming" || before.current === "removing");
    before.current = mode;
    if (isLeft) item.current?.querySelector<HTMLElement>(".name")?.focus();
  }, [mode]);
  const isElsewhere = openness === "in another tab";
  const earlier = states.slice(1);
  const times = whenApart(earlier.map(({ time }) => time));
  const changed = states[0] ? `Changed ${when(states[0].time)}, ` : "";
  const place = openness === "closed" ? "" : openness === "here" ? ", open now" : ", open in another tab";
  const rename = async (wished: string) => {
    setMode("plain");
    await run(id, async () => `The name is ${await library.rename(id, wished)} now.`);
  };

  return (
    <li ref={item}>
      {mode === "renaming" ? (
        <NameField name={name} keep={rename} leave={() => setMode("plain")} />
      ) : (
        <button
          type="button"
          className="name"
          data-workbook={id}
          aria-current={openness === "here" || undefined}
          onClick={() => void leave(() => (openness === "here" ? Promise.resolve() : library.open(id)))}
        >
          {name}
        </button>
      )}
      <small>{`${changed}${sizeOf(size)}${place}`}</small>
      {mode === "removing" && (
        <Question text={`Remove ${name}?`} leave={() => setMode("plain")} leaveLabel="Leave it">
          <button type="button" onClick={() => void remove()}>
            Remove
          </button>
        </Question>
      )}
      {(mode === "plain" || mode === "states") && (
        <div className="doings">
          <Doer name={name} label="Rename" press={() => setMode("renaming")} />
          <Doer
            name={name}
            label="Duplicate"
            press={() => void run(id, async () => `${await library.duplicate(id)} is the duplicate.`)}
          />
          {!isElsewhere && <Doer name={name} label="Remove" press={() => setMode("removing")} />}
          {!isElsewhere && states.length > 1 && (
            <Doer
              name={name}
              label="Earlier states"
              isOpen={mode === "states"}
              press={() => setMode(mode === "states" ? "plain" : "states")}
            />
          )}
        </div>
      )}
      {mode === "states" && (
        <ol>
          {earlier.map(({ number }, i) => (
            <li key={number}>
              <span>{times[i]}</span>
              <button
                type="button"
                aria-label={`Go back to ${name} of ${times[i]}`}
                onClick={() => void leave(() => library.goBack(id, number))}
              >
                Go back to it
              </button>
            </li>
          ))}
          <li>Going back loses nothing: how it is now stays among the earlier states.</li>
        </ol>
      )}
    </li>
  );
}

/** A button whose words say what, and to a screen reader also with which workbook. */
function Doer(props: { name: string; label: string; press: () => void; isOpen?: boolean }) {
  const { name, label, press, isOpen } = props;
  return (
    <button type="button" aria-label={`${label}: ${name}`} aria-expanded={isOpen} onClick={press}>
      {label}
    </button>
  );
}

function Question(props: { text: string; children: ReactNode; leave: () => void; leaveLabel: string }) {
  const { text, children, leave, leaveLabel } = props;
  const group = useRef<HTMLFieldSetElement>(null);
  useEffect(() => group.current?.querySelector("button")?.focus(), []);
  return (
    <fieldset ref={group} className="doings" aria-label={text}>
      <span>{text}</span>
      {children}
      <button type="button" onClick={leave}>
        {leaveLabel}
      </button>
    </fieldset>
  );
}

function NameField(props: { name: string; keep: (name: string) => Promise<void>; leave: () => void }) {
  const { name, keep, leave } = props;
  const [text, setText] = useState(name);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => {
    field.current?.focus();
    field.current?.select();
  }, []);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void keep(text);
      }}
      onKeyDown={(event) => {
        // It would close the whole list.
        if (event.key !== "Escape") return;
        event.preventDefault();
        event.stopPropagation();
        leave();
      }}
    >
      <input
        ref={field}
        aria-label={`Name of ${name}`}
        value={text}
        onChange={(event) => setText(event.target.value)}
      />
      <button type="submit">Rename</button>
      <button type="button" onClick={leave}>
        Leave it
      </button>
    </form>
  );
}
