import type { WeightUnit } from "../runsheet/settings";
import { Button } from "./Button";
import { OPENING } from "./words/opening";

/** For a workbook without tables: what is needed, and starter tables at a press. */
export function FirstUse({ unit, onStart, isBusy }: { unit: WeightUnit; onStart: () => void; isBusy: boolean }) {
  return (
    <div className="first-use">
      <p>{OPENING.noTable}</p>
      <ol>
        {OPENING.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <Button look="main" off={isBusy} onPress={onStart}>
        {OPENING.add}
      </Button>
      <p className="hint">{OPENING.hint(unit)}</p>
    </div>
  );
}
