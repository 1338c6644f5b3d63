/**
 * Lets the page answer while a workbook that was opened is worked out. Univer, version 0.25.1, computes formulas in
 * turns, but looks through all of them in one go before it, to see which ones need which cells.
 */

import { type Injector, requestImmediateMacroTask } from "@univerjs/core";
import {
  IFormulaCurrentConfigService,
  IFormulaDependencyGenerator,
  IFormulaRuntimeService,
} from "@univerjs/engine-formula";
import { TriggerCalculationController } from "@univerjs/preset-sheets-core";

/** Nothing is worked at for longer than this, in milliseconds, before the page may answer. */
const TURN = 40;

interface Formula {
  readonly addressFunctionNodes: readonly unknown[];
}

/** What is private in Univer's generator of dependencies: one step for each formula, and what comes after the last. */
interface Steps {
  _getRangeListByNode(node: unknown): Promise<unknown>;
  _calculateListByFunctionRefNode(formulas: readonly Formula[]): Promise<void>;
  generate(asModel?: boolean): Promise<unknown>;
}

/** While this is set, an edit stops the calculation and has it begin anew. */
interface Trigger {
  _executionInProgressParams: unknown;
}

export function lookThroughInTurns(injector: Injector, turn = TURN): void {
  const steps = injector.get(IFormulaDependencyGenerator) as unknown as Steps;
  const config = injector.get(IFormulaCurrentConfigService);
  const runtime = injector.get(IFormulaRuntimeService);
  const { _getRangeListByNode, _calculateListByFunctionRefNode, generate } = steps;
  /** When the turn began; null outside of the one loop that may be left between two formulas. */
  let began: number | null = null;
  steps.generate = async function (asModel) {
    // After an edit it stays one go: another edit in between would change what is being looked through.
    if (!config.isForceCalculate()) return generate.call(this, asModel);
    began = performance.now();
    const trigger = injector.get(TriggerCalculationController) as unknown as Trigger;
    trigger._executionInProgressParams ??= runtime.getRuntimeState();
    try {
      return await generate.call(this, asModel);
    } catch (fault) {
      trigger._executionInProgressParams = null;
      throw fault;
    } finally {
      began = null;
    }
  };
  steps._getRangeListByNode = async function (node) {
    const ranges = await _getRangeListByNode.call(this, node);
    if (began !== null && performance.now() - began > turn) {
      await nextTurn();
      if (began !== null) began = performance.now();
    }
    return ranges;
  };
  steps._calculateListByFunctionRefNode = async function (formulas) {
    const inTurns = began !== null;
    began = null;
    if (inTurns) await nextTurn();
    // For functions such as OFFSET Univer makes a tree of all formulas, even where none of them has one.
    if (formulas.every(({ addressFunctionNodes }) => addressFunctionNodes.length === 0)) return;
    await _calculateListByFunctionRefNode.call(this, formulas);
    if (inTurns) await nextTurn();
  };
}

const nextTurn = () => new Promise<void>((next) => requestImmediateMacroTask(() => next()));
