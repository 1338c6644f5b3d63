/**
 * For each text that a formula meets, in each cell it looks at, the engine tries all dates and numbers that there are
 * (version 0.25.1 remembers only those texts that are one). Here it remembers the others. For each blank cell that is
 * compared with a text it makes a text that holds nothing, and for each text that is compared with wildcards a pattern of
 * them; here that is always the same one, and what came of it is remembered.
 */

import {
  type BooleanValueObject,
  ErrorValueObject,
  NullValueObject,
  StringValueObject,
  ValueObjectFactory,
} from "@univerjs/engine-formula";

/** More different texts than a workbook's formulas look at; with more it begins anew. */
const MOST_KNOWN = 20_000;

function remember<T>(known: Map<string, T>, text: string, value: T): void {
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(text, value);
}

const texts = new Map<string, true>();
const create = ValueObjectFactory.create;
ValueObjectFactory.create = function (value, isPlain = false) {
  if (typeof value !== "string" || isPlain) return create.call(this, value, isPlain);
  if (texts.has(value)) return create.call(this, value, true);
  const made = create.call(this, value);
  if (made.isString()) remember(texts, value, true);
  return made;
};

// The error is one for all cells, as all that the engine makes are.
const noNumbers = new Map<string, ErrorValueObject>();
const asNumber = StringValueObject.prototype.convertToNumberObjectValue;
StringValueObject.prototype.convertToNumberObjectValue = function () {
  const text = this.getValue();
  const known = noNumbers.get(text);
  if (known) return known;
  const made = asNumber.call(this);
  if (made instanceof ErrorValueObject) remember(noNumbers, text, made);
  return made;
};

const nothing = StringValueObject.create("");
const compare = NullValueObject.prototype.compare;
NullValueObject.prototype.compare = function (other, operator, ...more) {
  return other.isString() ? nothing.compare(other, operator) : compare.call(this, other, operator, ...more);
};

interface Wildcards {
  getValue(): string;
  _checkWildcard(wildcards: string, operator: string): BooleanValueObject;
}
const matches = new Map<string, BooleanValueObject>();
const texted = StringValueObject.prototype as unknown as Wildcards;
const match = texted._checkWildcard;
texted._checkWildcard = function (wildcards, operator) {
  const asked = JSON.stringify([this.getValue(), operator, wildcards]);
  const known = matches.get(asked);
  if (known) return known;
  const is = match.call(this, wildcards, operator);
  remember(matches, asked, is);
  return is;
};
