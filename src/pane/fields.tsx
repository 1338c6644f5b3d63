import { type ReactNode, useId } from "react";

/** A labelled field, and its error beside it for eye and ear. */
function Field(props: {
  label: string;
  wrong?: string | undefined;
  children: (ids: { id: string; describedBy: string | undefined }) => ReactNode;
}) {
  const id = useId();
  const wrongId = props.wrong ? `${id}-wrong` : undefined;
  return (
    <div className="field">
      <label htmlFor={id}>{props.label}</label>
      {props.children({ id, describedBy: wrongId })}
      {props.wrong && (
        <span className="wrong" id={wrongId} role="alert">
          {props.wrong}
        </span>
      )}
    </div>
  );
}

export function TextField(props: {
  label: string;
  value: string;
  onChange: (value: string) => void;
  wrong?: string | undefined;
  type?: "text" | "date";
  /** What a phone's keys are for. */
  holds?: "number" | "words";
  /** The id of a list of what is offered. */
  list?: string | undefined;
}) {
  return (
    <Field label={props.label} wrong={props.wrong}>
      {({ id, describedBy }) => (
        <input
          id={id}
          type={props.type ?? "text"}
          inputMode={props.type === "date" || props.holds === "words" ? undefined : "decimal"}
          list={props.list}
          value={props.value}
          aria-invalid={props.wrong !== undefined}
          aria-describedby={describedBy}
          autoComplete="off"
          onChange={(event) => props.onChange(event.target.value)}
        />
      )}
    </Field>
  );
}

/** Several texts, a line each. */
export function LinesField(props: {
  label: string;
  value: string;
  onChange: (value: string) => void;
  wrong?: string | undefined;
}) {
  return (
    <Field label={props.label} wrong={props.wrong}>
      {({ id, describedBy }) => (
        <textarea
          id={id}
          rows={4}
          value={props.value}
          aria-invalid={props.wrong !== undefined}
          aria-describedby={describedBy}
          autoComplete="off"
          spellCheck={false}
          onChange={(event) => props.onChange(event.target.value)}
        />
      )}
    </Field>
  );
}

export function ChoiceField<T extends string>(props: {
  label: string;
  value: T;
  choices: readonly { readonly value: T; readonly text: string }[];
  onChange: (value: T) => void;
}) {
  return (
    <Field label={props.label}>
      {({ id, describedBy }) => (
        <select
          id={id}
          value={props.value}
          aria-describedby={describedBy}
          onChange={(event) => props.onChange(event.target.value as T)}
        >
          {props.choices.map(({ value, text }) => (
            <option key={value} value={value}>
              {text}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
