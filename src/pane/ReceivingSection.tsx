import { CHOICES } from "../runsheet/settings";
import { Button } from "./Button";
import { ChoiceField, TextField } from "./fields";
import { Lines } from "./Lines";
import type { ReceiptField } from "./receiving/parseReceipt";
import { tableWords } from "./receiving/planReceipt";
import type { Receiving } from "./state/useReceiving";
import { RECEIVING } from "./words/receiving";

/** The id of the list of names that are offered. */
const NAMES = "pane-known-items";
const UNITS = [...CHOICES.unit, "pieces"] as const;

/** What came in from a supplier, written down as a row of the moves. */
export function ReceivingSection({ receiving, isBusy }: { receiving: Receiving; isBusy: boolean }) {
  const { typed, type, names, refused, ready, wrong, add } = receiving;
  const field = (name: Exclude<ReceiptField, "unit">, more: { kind?: "words" | "date"; list?: string } = {}) => (
    <TextField
      label={RECEIVING[name]}
      value={typed[name]}
      wrong={wrong[name]}
      type={more.kind === "date" ? "date" : "text"}
      holds={more.kind === "words" ? "words" : "number"}
      list={more.list}
      onChange={(text) => type(name, text)}
    />
  );
  return (
    <section aria-labelledby="pane-receiving">
      <h2 id="pane-receiving">{RECEIVING.heading}</h2>
      <p className="hint">{RECEIVING.hint}</p>
      {refused && <p className="wrong">{refused}</p>}
      <datalist id={NAMES}>
        {names.map((name) => (
          <option key={name} value={name} />
        ))}
      </datalist>
      <div className="pairs">
        {field("item", { kind: "words", list: NAMES })}
        {field("lot", { kind: "words" })}
        {field("quantity")}
        <ChoiceField
          label={RECEIVING.unit}
          value={typed.unit}
          choices={UNITS.map((value) => ({ value, text: value }))}
          onChange={(unit) => type("unit", unit)}
        />
        {field("date", { kind: "date" })}
        {field("paid")}
        {field("bestBefore", { kind: "date" })}
        {field("note", { kind: "words" })}
      </div>
      <div role="status">{ready && <Shown ready={ready} />}</div>
      <Button off={isBusy || refused !== undefined} onPress={add}>
        {ready && ready.doubts.length > 0 ? RECEIVING.addAnyway : RECEIVING.add}
      </Button>
    </section>
  );
}

/** The rows that will be added, and what is doubtful in them. */
function Shown({ ready: { lines, table, doubts } }: { ready: NonNullable<Receiving["ready"]> }) {
  return (
    <>
      <p>{tableWords(table)}</p>
      <Lines lines={lines} />
      {doubts.length > 0 && (
        <>
          <p>{RECEIVING.doubts}</p>
          <Lines lines={doubts} />
        </>
      )}
    </>
  );
}
