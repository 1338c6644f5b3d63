import type { Place, SourceRows } from "../host/host";
import { isError, type Problem } from "../runsheet/problem";
import type { TableTypeId } from "../runsheet/tables/registry";
import { Button } from "./Button";
import type { GivenTables } from "./givenTables";
import { listOfRows, type ProblemGroup } from "./groupProblems";
import type { PaneState } from "./state/usePane";
import { CHECK } from "./words/check";

const SHOWN = 50;

/** What the maker may decide about a problem by a press. */
type Decisions = PaneState["decisions"];

/** What is to be fixed and what is to be checked, by row, in words; a press shows the cell. */
export function Problems(props: {
  groups: readonly ProblemGroup[];
  /** The tables that they speak of. */
  given: GivenTables;
  decisions: Decisions;
  onShow: (place: Place) => void;
}) {
  const { groups, given, decisions, onShow } = props;
  if (groups.length === 0) return null;
  // Safety is never cut from the list, however much else there is to say.
  const shown = groups.filter(({ problem }, i) => i < SHOWN || problem.safety);
  return (
    <ul className="problems">
      {shown.map(({ problem, rows }, i) => {
        const { table: kind = "pour", text } = problem;
        const table = given.read[kind];
        const at = table && placeOf(problem, rows, table, given.tables[kind]?.columns);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: the list is redrawn whole
          <li key={i} className={isError(problem) ? "stop" : "look"}>
            {at === undefined ? (
              text
            ) : (
              <button type="button" onClick={() => onShow(at)}>
                <span className="where">{where(problem, rows, table as SourceRows)}</span> {text}
              </button>
            )}
            {table && <Choices problem={problem} kind={kind} table={table} decisions={decisions} />}
          </li>
        );
      })}
      {groups.length > shown.length && <li className="look">{CHECK.more(groups.length - shown.length)}</li>}
    </ul>
  );
}

/** The first cell that a problem speaks of; undefined where it is about no row. */
function placeOf(
  { field }: Problem,
  [row]: readonly number[],
  { place }: SourceRows,
  columns: Readonly<Record<string, number | undefined>> = {},
): Place | undefined {
  if (row === undefined) return undefined;
  const column = place.column + ((field && columns[field]) ?? 0);
  return { sheet: place.sheet, row: place.row + 1 + row, column, rows: 1, columns: 1 };
}

function where(problem: Problem, rows: readonly number[], table: SourceRows): string {
  const first = table.place.row + 2;
  const numbers = listOfRows(rows.map((row) => first + row));
  const isPour = (problem.table ?? "pour") === "pour";
  return CHECK.where(problem, numbers, rows.length === 1, isPour ? undefined : table.name);
}

/** The presses beside a problem that asks for a decision. */
function Choices(props: { problem: Problem; kind: TableTypeId; table: SourceRows; decisions: Decisions }) {
  const { problem, kind, table, decisions } = props;
  const { below, unread } = problem;
  if (below !== undefined) {
    return (
      <div className="buttons">
        <Button onPress={() => decisions.takeIn(table, kind, below)}>{CHECK.takeIn(below, table.name)}</Button>
        {isError(problem) && (
          <Button onPress={() => decisions.leaveRows(table, below)}>{CHECK.leaveRows(below, table.name)}</Button>
        )}
      </div>
    );
  }
  if (unread === undefined) return null;
  return (
    <div className="buttons">
      <Button onPress={() => decisions.leaveColumn(kind, table.name, unread)}>{CHECK.leaveColumn(unread)}</Button>
    </div>
  );
}
