import type { Injector } from "@univerjs/core";
import { DocSelectionManagerService, IEditorBridgeService, IEditorService } from "@univerjs/preset-sheets-core";
import { functionAt } from "../../engine/functionAt";
import { NAMESPACE } from "../../engine/functions";

/** Which of our functions the user is at: the one being typed, else one in the formula of the selected cell. */
export class TypedFunction {
  constructor(
    private readonly injector: Injector,
    /** Their ids in the order in which they are offered. */
    private readonly ids: readonly string[],
  ) {}

  /** The id of the function at the caret of the formula being typed; null where none is or nothing is typed. */
  typed(): string | null {
    if (!this.injector.get(IEditorBridgeService).isVisible().visible) return null;
    const editor = this.injector.get(IEditorService).getFocusEditor();
    const text = editor?.getDocumentData().body?.dataStream.replace(/[\r\n]+$/, "") ?? "";
    return this.#known(functionAt(text, editor?.getSelectionRanges()[0]?.startOffset ?? text.length));
  }

  /** The id of the first of our functions in a formula. */
  in(formula: string): string | null {
    const [, name] = /POUR\.([A-Z0-9]+)\(/i.exec(formula) ?? [];
    return name ? this.#known(`${NAMESPACE}.${name}`) : null;
  }

  /** Calls back when the caret has moved in a text being typed, or typing has ended. */
  onMove(callback: () => void): void {
    this.injector.get(DocSelectionManagerService).textSelection$.subscribe(callback);
    this.injector.get(IEditorBridgeService).visible$.subscribe(callback);
  }

  /** The function of this name, or the first one that begins so. */
  #known(name: string | null): string | null {
    const upper = name?.toUpperCase() ?? "";
    if (!upper.startsWith(`${NAMESPACE}.`)) return null;
    const wanted = upper.slice(NAMESPACE.length + 1);
    if (this.ids.includes(wanted)) return wanted;
    return wanted === "" ? null : (this.ids.find((id) => id.startsWith(wanted)) ?? null);
  }
}
