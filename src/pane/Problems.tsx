import type { Host, SourceRows } from "../host/host";
import type { Columns } from "../runsheet/columns";
import type { Problem } from "../runsheet/readRows";

const SHOWN = 50;

/** What is to mend and what deserves a look, by row, in words; a press shows the cell. */
export function Problems(props: {
  problems: readonly Problem[];
  rows: SourceRows;
  columns: Columns;
  host: Host;
  onError: (error: unknown) => void;
}) {
  const { problems, rows, columns, host, onError } = props;
  if (problems.length === 0) return null;
  const show = ({ row, role }: Problem) => {
    const { sheet, row: top, column: left } = rows.place;
    const column = left + ((role && columns[role]) ?? 0);
    host.select({ sheet, row: top + 1 + (row ?? 0), column, rows: 1, columns: 1 }).catch(onError);
  };
  return (
    <ul className="problems">
      {problems.slice(0, SHOWN).map((problem) => (
        <li key={`${problem.row} ${problem.text}`} className={problem.stops ? "stop" : "look"}>
          {problem.row === undefined ? (
            problem.text
          ) : (
            <button type="button" onClick={() => show(problem)}>
              <span className="where">
                {problem.stops ? "Mend" : "Look at"} row {rows.place.row + 2 + problem.row}
              </span>{" "}
              {problem.text}
            </button>
          )}
        </li>
      ))}
      {problems.length > SHOWN && <li className="look">and {problems.length - SHOWN} more</li>}
    </ul>
  );
}
