/** A correction of how a typed formula is read, sheet editor, version 0.25.1: it would change more than its capitals. */

import { type LexerTreeBuilder, sequenceNodeType } from "@univerjs/engine-formula";
import { EditingRenderController } from "@univerjs/preset-sheets-core";

interface Editor {
  _lexerTreeBuilder: Pick<LexerTreeBuilder, "sequenceNodesBuilder">;
  _submitEdit(...more: unknown[]): unknown;
}

/** The readers of formulas whose pieces are those to be written in capitals. */
const forCapitals = new WeakSet<object>();

// It writes each number in its shortest form, and takes the texts behind out of the formula at the wrong letters then:
// =IF(A1<1.0,"low","high") would become =IF(A1<1,","l","hi"). So it is shown functions, references, TRUE and FALSE alone.
const editor = EditingRenderController.prototype as unknown as Editor;
const submit = editor._submitEdit;
editor._submitEdit = function (...more) {
  if (!forCapitals.has(this._lexerTreeBuilder)) {
    this._lexerTreeBuilder = piecesForCapitals(this._lexerTreeBuilder);
    forCapitals.add(this._lexerTreeBuilder);
  }
  return submit.apply(this, more);
};

function piecesForCapitals(reader: Editor["_lexerTreeBuilder"]): Editor["_lexerTreeBuilder"] {
  const pieces: LexerTreeBuilder["sequenceNodesBuilder"] = (formula) =>
    reader
      .sequenceNodesBuilder(formula)
      ?.map((one) => (typeof one === "string" || hasCapitals(one.nodeType, one.token) ? one : one.token));
  return Object.create(reader, { sequenceNodesBuilder: { value: pieces } });
}

const hasCapitals = (type: sequenceNodeType, token: string): boolean =>
  type === sequenceNodeType.FUNCTION || type === sequenceNodeType.REFERENCE || /^(true|false)$/i.test(token);
