import type { Injector, Workbook } from "@univerjs/core";
import { IDependencyManagerService, IFormulaRuntimeService } from "@univerjs/engine-formula";

/** A cell by its sheet's id, row and column, as one text. */
export const cellKey = (sheetId: string, row: number, column: number): string => `${row},${column},${sheetId}`;

/** Where Univer is listened to: whether it has come upon a cycle that may still be there. */
const met = new WeakMap<Injector, boolean>();

/** Looks for cycles only once Univer has come upon one. It does before it works any of their formulas out. */
export function watchForCycles(injector: Injector): void {
  const runtime = injector.get(IFormulaRuntimeService);
  const { enableCycleDependency } = runtime;
  met.set(injector, false);
  runtime.enableCycleDependency = function () {
    met.set(injector, true);
    enableCycleDependency.call(this);
  };
}

/** The formulas that refer to themselves, perhaps through others. */
export function cyclesOf(injector: Injector, workbook: Workbook): ReadonlySet<string> {
  if (met.get(injector) === false) return new Set();
  const found = searchCycles(injector, workbook);
  if (met.has(injector) && found.size === 0) met.set(injector, false);
  return found;
}

/**
 * Univer works formulas of a cycle out once and shows a number as good as any other, so what depends on what is asked of
 * it here.
 */
function searchCycles(injector: Injector, workbook: Workbook): ReadonlySet<string> {
  const dependencies = injector.get(IDependencyManagerService);
  const unitId = workbook.getUnitId();
  const keys = new Map<number, string>();
  const cells: { id: number; sheetId: string; row: number; column: number }[] = [];
  for (const sheet of workbook.getSheets()) {
    const sheetId = sheet.getSheetId();
    sheet.getCellMatrix().forValue((row, column, cell) => {
      if (!cell?.f && !cell?.si) return;
      const id = dependencies.getFormulaDependency(unitId, sheetId, row, column);
      if (typeof id !== "number") return;
      keys.set(id, cellKey(sheetId, row, column));
      cells.push({ id, sheetId, row, column });
    });
  }
  const users = new Map<number, number[]>();
  // Only so it finds references to single cells too.
  dependencies.openKdTree();
  for (const { id, sheetId, row, column } of cells) {
    const range = { startRow: row, endRow: row, startColumn: column, endColumn: column };
    const found = dependencies.searchDependency([{ unitId, sheetId, range }]);
    users.set(
      id,
      [...found].filter((one) => keys.has(one)),
    );
  }
  dependencies.closeKdTree();
  // What nothing leads to, and then what leads to nothing, is taken away until only cycles are left.
  const left = withoutEnds(withoutEnds(users));
  return new Set([...left.keys()].map((id) => keys.get(id) as string));
}

/** A graph without the nodes to which no path from a cycle leads, and turned round. */
function withoutEnds(edges: ReadonlyMap<number, readonly number[]>): Map<number, number[]> {
  const incoming = new Map<number, number>();
  for (const to of [...edges.values()].flat()) incoming.set(to, (incoming.get(to) ?? 0) + 1);
  const ends = [...edges.keys()].filter((id) => !incoming.get(id));
  const gone = new Set(ends);
  for (let id = ends.pop(); id !== undefined; id = ends.pop()) {
    for (const to of edges.get(id) ?? []) {
      const count = (incoming.get(to) ?? 0) - 1;
      incoming.set(to, count);
      if (count > 0) continue;
      gone.add(to);
      ends.push(to);
    }
  }
  const turned = new Map([...edges.keys()].filter((id) => !gone.has(id)).map((id): [number, number[]] => [id, []]));
  for (const [id, all] of edges) {
    if (!gone.has(id)) for (const to of all) turned.get(to)?.push(id);
  }
  return turned;
}
