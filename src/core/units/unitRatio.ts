import { wrong } from "../check/wrong";
import { centimetresIn } from "./length";
import { unitKindOf, unitsInWords } from "./spellings";
import { millilitresIn } from "./volume";
import { gramsIn } from "./weight";

const IN_ONE = { weight: gramsIn, volume: millilitresIn, length: centimetresIn };

/** How many of the unit `to` one of the unit `from` is. Faults unless both are weights, volumes or lengths. */
export function unitRatio(fromName: string, from: string, toName: string, to: string): number {
  const [kind, other] = [measured(fromName, from), measured(toName, to)];
  if (kind !== other) {
    throw wrong(toName, `${to.trim()} is a ${other} and ${from.trim()} a ${kind}; write two units of one kind`);
  }
  return IN_ONE[kind](fromName, from) / IN_ONE[kind](toName, to);
}

function measured(name: string, unit: string): keyof typeof IN_ONE {
  const kind = unitKindOf(unit);
  if (kind !== undefined && kind !== "temperature") return kind;
  throw wrong(name, `"${unit.slice(0, 40)}" is not known here; write ${unitsInWords("weight", "volume", "length")}`);
}
