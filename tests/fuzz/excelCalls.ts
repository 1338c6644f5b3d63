import { metadata, script } from "../functions/built";
import { faultIn } from "../functions/generated";
import { FunctionsRuntime } from "../host/excel/client/functionsRuntime";
import { everything } from "../host/excel/client/requirementSets";
import { callOf, type ExcelCall } from "./calls";
import type { Part } from "./part";
import type { Watch } from "./watched";

type Work = (...given: unknown[]) => unknown;

/** The functions of the built script in Microsoft's own runtime, each run of one under watch. */
export function excelCalls(watch: Watch): Part<ExcelCall>[] {
  const runtime = new FunctionsRuntime("web", script, everything);
  const { Error: CellErrors } = runtime.office.CustomFunctions as { Error: new () => Error };
  /** What came of the last run. */
  let fault: string | undefined = "was not run";
  const { mappings } = (runtime.office.CustomFunctions as { _association: { mappings: Record<string, Work> } })
    ._association;
  for (const [id, work] of Object.entries(mappings)) {
    mappings[id] = (...given) => {
      try {
        const answer = watch.run(
          id,
          () => work(...given),
          () => JSON.stringify(given.slice(0, -1)),
        );
        fault = faultIn(answer, CellErrors);
        return answer;
      } catch (thrown) {
        fault = `threw ${String(thrown)}`;
        return [[""]];
      }
    };
  }
  return metadata.functions.map((declared) => ({
    name: declared.id,
    cases: callOf(declared),
    async holds({ call, isRich }) {
      fault = "was not run";
      const { isFailed } = (await runtime.callAll([call], isRich))[0] ?? {};
      // What it keeps for other tests would be seen as growth here.
      runtime.sent.length = 0;
      if (fault) throw new Error(`${declared.id} ${fault}`);
      if (isFailed) throw new Error(`${declared.id} failed as a whole on its way to Excel`);
    },
  }));
}
