import { oneOf } from "../check/oneOf";
import { wrong } from "../check/wrong";
import { centimetresIn } from "./length";
import { millilitresIn } from "./volume";
import { gramsIn } from "./weight";

const KINDS = {
  g: "weight",
  kg: "weight",
  oz: "weight",
  lb: "weight",
  ml: "volume",
  l: "volume",
  floz: "volume",
  in3: "volume",
  cm3: "volume",
  mm: "length",
  cm: "length",
  in: "length",
} as const;

const IN_ONE = { weight: gramsIn, volume: millilitresIn, length: centimetresIn };

/** How many of the unit `to` one of the unit `from` is. Faults unless both are weights, volumes or lengths. */
export function unitRatio(fromName: string, from: string, toName: string, to: string): number {
  const units = Object.keys(KINDS) as (keyof typeof KINDS)[];
  const [source, target] = [oneOf(fromName, from, units), oneOf(toName, to, units)];
  const kind = KINDS[source];
  if (kind !== KINDS[target]) {
    throw wrong(toName, `${target} is a ${KINDS[target]} and ${source} a ${kind}; write two units of one kind`);
  }
  return IN_ONE[kind](fromName, source) / IN_ONE[kind](toName, target);
}
