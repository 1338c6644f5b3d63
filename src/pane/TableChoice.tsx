import type { Source, SourceRows } from "../host/host";
import { KINDS, type KindName, roleName, rolesOf } from "../runsheet/kinds";
import { Button } from "./Button";
import { columnNames } from "./columns";
import { ChoiceField } from "./fields";

const NONE = " none"; // no table is called so: names hold no spaces

/** The choice of a table, and below it which column is what. */
export function TableChoice(props: {
  kind: KindName;
  sources: readonly Source[];
  rows: SourceRows | undefined;
  columns: Readonly<Record<string, number | undefined>>;
  onChoose: (name: string | null) => void;
  /** A column by its name, or null for none. */
  onColumn: (role: string, column: string | null) => void;
  /** Puts a table of this kind in; left out where that is no use. */
  onPutIn?: (() => void) | undefined;
}) {
  const { kind, sources, rows, columns, onChoose, onColumn, onPutIn } = props;
  const roles = rolesOf(kind);
  const isSelection = rows?.name === "";
  return (
    <div className="table-choice">
      <ChoiceField
        label={KINDS[kind].name}
        value={rows ? rows.name : NONE}
        choices={[
          ...(kind === "pour" && rows ? [] : [{ value: NONE, text: kind === "pour" ? "choose a table" : "no table" }]),
          ...(isSelection ? [{ value: "", text: `Selected cells on ${rows.place.sheet}` }] : []),
          ...sources.map(({ name, place }) => ({ value: name, text: `${name} (${place.sheet})` })),
        ]}
        onChange={(name) => {
          if (name !== "" && !(kind === "pour" && name === NONE)) onChoose(name === NONE ? null : name);
        }}
      />
      {!rows && onPutIn && <Button onPress={onPutIn}>Put an empty {KINDS[kind].name} table in</Button>}
      {rows && (
        <details>
          <summary>
            Columns: {roles.filter((role) => columns[role] !== undefined).length} of {roles.length} found by their
            headings
          </summary>
          {roles.map((role) => (
            <ChoiceField
              key={role}
              label={roleName(kind, role)}
              value={columns[role] === undefined ? NONE : String(columns[role])}
              choices={[
                { value: NONE, text: "no column" },
                ...columnNames(rows.headings).map((name, i) => ({ value: String(i), text: name })),
              ]}
              onChange={(value) => onColumn(role, columnNames(rows.headings)[Number(value)] ?? null)}
            />
          ))}
        </details>
      )}
    </div>
  );
}
