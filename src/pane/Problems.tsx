import type { Host } from "../host/host";
import type { Problem } from "../runsheet/tableReader";
import { columnsOf } from "./columns";
import type { Kept } from "./useSettings";
import type { ReadTables } from "./useTables";

const SHOWN = 50;

/** What is to mend and what deserves a look, by row, in words; a press shows the cell. */
export function Problems(props: {
  problems: readonly Problem[];
  tables: ReadTables;
  kept: Kept | undefined;
  host: Host;
  onError: (error: unknown) => void;
}) {
  const { problems, tables, kept, host, onError } = props;
  if (problems.length === 0) return null;
  const placeOf = ({ kind = "pour", row, role }: Problem) => {
    const table = tables[kind];
    if (!table || row === undefined) return undefined;
    const { columns } = columnsOf(kind, table, kept?.columns ?? {});
    const column = table.place.column + ((role && columns[role]) ?? 0);
    return { sheet: table.place.sheet, row: table.place.row + 1 + row, column, rows: 1, columns: 1 };
  };
  return (
    <ul className="problems">
      {problems.slice(0, SHOWN).map((problem, i) => {
        const place = placeOf(problem);
        const of = problem.kind && problem.kind !== "pour" ? ` of ${tables[problem.kind]?.name}` : "";
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: the list is redrawn whole, and two rows may say the same
          <li key={i} className={problem.stops ? "stop" : "look"}>
            {place === undefined ? (
              problem.text
            ) : (
              <button type="button" onClick={() => host.select(place).catch(onError)}>
                <span className="where">
                  {problem.stops ? "Mend" : "Look at"} row {place.row + 1}
                  {of}
                </span>{" "}
                {problem.text}
              </button>
            )}
          </li>
        );
      })}
      {problems.length > SHOWN && <li className="look">and {problems.length - SHOWN} more</li>}
    </ul>
  );
}
