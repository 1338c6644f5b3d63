import type { Source, SourceRows } from "../host/host";
import { columnNames } from "../runsheet/tables/headings/columnNames";
import { fieldName, fieldsOf, TABLE_TYPES, type TableTypeId } from "../runsheet/tables/registry";
import { Button } from "./Button";
import { ChoiceField } from "./fields";
import { TABLES } from "./words/tables";

const NONE = " none"; // no table is called so: names hold no spaces

/** The choice of a table, and below it which column is what. */
export function TableChoice(props: {
  kind: TableTypeId;
  sources: readonly Source[];
  rows: SourceRows | undefined;
  columns: Readonly<Record<string, number | undefined>>;
  onChoose: (name: string | null) => void;
  /** A column by its name, or null for none. */
  onColumn: (role: string, column: string | null) => void;
  /** The headings of columns that stay unread and are not asked about, and the way to ask again. */
  leftOut: readonly string[];
  onAskAgain: () => void;
  /** Adds a table of this kind; left out where that is no use. */
  onAdd?: (() => void) | undefined;
}) {
  const { kind, sources, rows, columns, onChoose, onColumn, leftOut, onAskAgain, onAdd } = props;
  const roles = fieldsOf(kind);
  const isSelection = rows?.name === "";
  return (
    <div className="table-choice">
      <ChoiceField
        label={TABLE_TYPES[kind].name}
        value={rows ? rows.name : NONE}
        choices={[
          ...(kind === "pour" && rows ? [] : [{ value: NONE, text: kind === "pour" ? TABLES.choose : TABLES.none }]),
          ...(isSelection ? [{ value: "", text: TABLES.selectedOn(rows.place.sheet) }] : []),
          ...sources.map(({ name, place }) => ({ value: name, text: `${name} (${place.sheet})` })),
        ]}
        onChange={(name) => {
          if (name !== "" && !(kind === "pour" && name === NONE)) onChoose(name === NONE ? null : name);
        }}
      />
      {!rows && onAdd && <Button onPress={onAdd}>{TABLES.addEmpty(TABLE_TYPES[kind].name)}</Button>}
      {rows && (
        <details>
          <summary>{TABLES.columns(roles.filter((role) => columns[role] !== undefined).length, roles.length)}</summary>
          {roles.map((role) => (
            <ChoiceField
              key={role}
              label={fieldName(kind, role)}
              value={columns[role] === undefined ? NONE : String(columns[role])}
              choices={[
                { value: NONE, text: TABLES.noColumn },
                ...columnNames(rows.headings).map((name, i) => ({ value: String(i), text: name })),
              ]}
              onChange={(value) => onColumn(role, columnNames(rows.headings)[Number(value)] ?? null)}
            />
          ))}
          {leftOut.length > 0 && (
            <>
              <p className="hint">{TABLES.leftOut(leftOut)}</p>
              <Button onPress={onAskAgain}>{TABLES.askAgain}</Button>
            </>
          )}
        </details>
      )}
    </div>
  );
}
