import type { Host, SourceRows } from "../host/host";
import { isError, type Problem } from "../runsheet/problem";
import type { TableTypeId } from "../runsheet/tables/registry";
import { Button } from "./Button";
import { columnsOf } from "./columns";
import { listOfRows, type ProblemGroup } from "./groupProblems";
import type { Kept } from "./useSettings";
import type { ReadTables } from "./useTables";

const SHOWN = 50;

/** What the maker may decide about a problem by a press. */
export interface Decisions {
  /** Rows right below a table become rows of it, or stay out. */
  readonly onTakeIn: (table: SourceRows, kind: TableTypeId, rows: number) => void;
  readonly onLeaveRows: (table: SourceRows, rows: number) => void;
  /** A column that nobody reads stays unread. */
  readonly onLeaveColumn: (kind: TableTypeId, table: string, heading: string) => void;
}

/** What is to be fixed and what is to be checked, by row, in words; a press shows the cell. */
export function Problems(props: {
  groups: readonly ProblemGroup[];
  tables: ReadTables;
  kept: Kept | undefined;
  host: Host;
  onError: (error: unknown) => void;
  decisions: Decisions;
}) {
  const { groups, tables, kept, host, onError, decisions } = props;
  if (groups.length === 0) return null;
  // Safety is never cut from the list, however much else there is to say.
  const shown = groups.filter(({ problem }, i) => i < SHOWN || problem.safety);
  return (
    <ul className="problems">
      {shown.map(({ problem, rows }, i) => {
        const { table: kind = "pour", field, text } = problem;
        const isToFix = isError(problem);
        const table = tables[kind];
        const [row] = rows;
        const place = () => {
          if (!table || row === undefined) return undefined;
          const { columns } = columnsOf(kind, table, kept?.columns ?? {});
          const column = table.place.column + ((field && columns[field]) ?? 0);
          return { sheet: table.place.sheet, row: table.place.row + 1 + row, column, rows: 1, columns: 1 };
        };
        const at = place();
        const first = table ? table.place.row + 2 : 0;
        const where = `${rows.length > 1 ? "rows" : "row"} ${listOfRows(rows.map((one) => first + one))}`;
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: the list is redrawn whole
          <li key={i} className={isToFix ? "stop" : "look"}>
            {at === undefined ? (
              text
            ) : (
              <button type="button" onClick={() => host.select(at).catch(onError)}>
                <span className="where">
                  {isToFix ? "Fix" : "Check"} {where}
                  {kind !== "pour" && ` of ${table?.name}`}
                </span>{" "}
                {text}
              </button>
            )}
            {table && <Choices problem={problem} kind={kind} table={table} decisions={decisions} />}
          </li>
        );
      })}
      {groups.length > shown.length && <li className="look">and {groups.length - shown.length} more</li>}
    </ul>
  );
}

/** The presses beside a problem that asks for a decision. */
function Choices(props: { problem: Problem; kind: TableTypeId; table: SourceRows; decisions: Decisions }) {
  const { problem, kind, table, decisions } = props;
  const { below, unread } = problem;
  if (below !== undefined) {
    const rows = below === 1 ? "the row" : `the ${below} rows`;
    const name = table.name || "the selection";
    return (
      <div className="buttons">
        <Button onPress={() => decisions.onTakeIn(table, kind, below)}>
          Take {rows} into {name}
        </Button>
        {isError(problem) && (
          <Button onPress={() => decisions.onLeaveRows(table, below)}>
            Leave {rows} out of {name}
          </Button>
        )}
      </div>
    );
  }
  if (unread === undefined) return null;
  return (
    <div className="buttons">
      <Button onPress={() => decisions.onLeaveColumn(kind, table.name, unread)}>Leave {unread} out</Button>
    </div>
  );
}
