import { sameName } from "../runsheet/sameName";
import { FURTHER_TYPE_IDS, isFormer, TABLE_TYPES, type TableTypeId, tableName } from "../runsheet/tables/registry";
import { Button } from "./Button";
import { keyOf } from "./columns";
import { FirstUse } from "./FirstUse";
import type { Kept } from "./state/kept";
import type { PaneState } from "./state/usePane";
import { TableChoice } from "./TableChoice";
import { OPENING } from "./words/opening";
import { TABLES } from "./words/tables";

/** Which tables a run sheet is made from; for a workbook without any, how to begin. */
export function TableSection({ pane }: { pane: PaneState }) {
  const { tables, fields, running } = pane;
  const { kept } = fields;
  return (
    <section aria-labelledby="pane-table">
      <h2 id="pane-table">{TABLES.heading}</h2>
      {tables.sources === undefined || kept === undefined ? (
        <p>{OPENING.reading}</p>
      ) : (
        <>
          {!tables.read.pour && (
            <FirstUse unit={kept.choices.unit} onStart={tables.begin} isBusy={running !== undefined} />
          )}
          {(tables.read.pour || tables.sources.length > 0) && <Choice kind="pour" tables={tables} kept={kept} />}
          <Button onPress={tables.takeSelection}>{TABLES.selection}</Button>
          {tables.read.pour && (
            <details>
              <summary>
                {TABLES.more(
                  FURTHER_TYPE_IDS.filter((kind) => tables.read[kind]).map((kind) => TABLE_TYPES[kind].name),
                )}
              </summary>
              <p className="hint">{TABLES.moreHint}</p>
              {FURTHER_TYPE_IDS.filter((kind) => tables.read[kind] || !isFormer(kind)).map((kind) => (
                <Choice key={kind} kind={kind} tables={tables} kept={kept} />
              ))}
            </details>
          )}
        </>
      )}
    </section>
  );
}

/** The choice of the table of one kind. */
function Choice({ kind, tables, kept }: { kind: TableTypeId; tables: PaneState["tables"]; kept: Kept }) {
  const { sources = [], read, given } = tables;
  const rows = read[kind];
  const name = rows?.name ?? "";
  const isNamed = sources.some((source) => sameName(source.name) === sameName(tableName(kind)));
  return (
    <TableChoice
      kind={kind}
      sources={sources}
      rows={rows}
      columns={given?.tables[kind]?.columns ?? {}}
      onChoose={(chosen) => tables.choose(kind, chosen)}
      leftOut={kept.leftOut[keyOf(kind, name)] ?? []}
      onAskAgain={() => tables.askAgain(kind, name)}
      onAdd={kind === "pour" || isNamed ? undefined : () => tables.add(kind)}
      onColumn={(field, column) => tables.chooseColumn(kind, name, field, column)}
    />
  );
}
