import { wrong } from "../check/wrong";
import { type UnitKind, type UnitOf, unitKindOf, unitOf, unitsInWords } from "./spellings";

/** The short name of the unit that a text spells; a fault where it is none of this kind. */
export function checkedUnit<K extends UnitKind>(kind: K, name: string, text: string): UnitOf<K> {
  const unit = unitOf(kind, text);
  if (unit !== undefined) return unit;
  const other = unitKindOf(text);
  const shown = `"${text.slice(0, 40)}"`;
  // An ounce and a fluid ounce are the commonest slip of the trade.
  const fluid = kind === "volume" && unitOf("weight", text) === "oz" ? "; a fluid ounce is floz" : "";
  if (other === kind) throw wrong(name, `${shown} is not worked out here; write ${unitsInWords(kind)}`);
  throw wrong(name, `${shown} is ${other ? `a ${other}` : "not known here"}; write ${unitsInWords(kind)}${fluid}`);
}
