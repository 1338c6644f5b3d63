import { aboveZero } from "../../core/check/aboveZero";
import type { Problem } from "../problem";
import { sameName } from "../sameName";
import { VESSEL } from "./commonFields";
import type { Field } from "./headings/field";
import type { RowReader } from "./rowReader";
import type { TableReader } from "./tableReader";
import { type Starter, tableType } from "./tableType";

const FIELDS = {
  // An item is what goes with the vessel here.
  vessel: { ...VESSEL, aliases: VESSEL.aliases.filter((word) => word !== "item name"), alone: ["candles", "vessels"] },
  item: {
    name: "Item",
    reads: "name",
    aliases: ["component", "components", "item name", "part", "supply"],
    alone: ["name", "what", "description", "kind"],
  },
  each: {
    name: "Each",
    reads: "count",
    aliases: ["how many each", "quantity each", "number each", "count each", "pieces each", "needed each"],
    alone: ["quantity", "how many", "count", "number", "pieces", "pcs", "needed"],
  },
} satisfies Readonly<Record<string, Field>>;
type ComponentField = keyof typeof FIELDS;

export const COMPONENTS = tableType({
  name: "Components",
  purpose:
    "What goes with each vessel and is counted: wicks, lid, label, box. A row for each item of a vessel, with how many of it one candle takes.",
  gives: "Components: wicks, lid, label and box of each vessel.",
  fields: FIELDS,
  needs: [["vessel"], ["item"], ["each"]],
  unusable: "warning",
  asks: [],
  starter,
  read: readComponents,
  doubts: ownerless,
});

/** Something that is counted into each candle of a vessel. */
export interface Component {
  readonly vessel: string;
  readonly item: string;
  /** How many one candle takes; undefined where that cannot be read. */
  readonly each: number | undefined;
  readonly wrong: readonly Problem[];
}

/** The components by vessel, in the order of their rows. */
export type Components = ReadonlyMap<string, readonly Component[]>;

function readComponents(table: TableReader<ComponentField>): Components {
  const found = new Map<string, Component[]>();
  for (const reader of table.rows) {
    const [vessel, item] = [reader.text("vessel"), reader.text("item")];
    if (vessel === "" || item === "") continue;
    const own = found.get(sameName(vessel)) ?? [];
    found.set(sameName(vessel), own);
    const each = eachIn(reader);
    if (own.some((one) => sameName(one.item) === sameName(item))) {
      const text = `${item} stands twice for ${vessel}; both rows count`;
      reader.problems.push(reader.warning("item", text));
    }
    own.push({ vessel, item, each, wrong: reader.problems });
  }
  return found;
}

function eachIn(reader: RowReader<ComponentField>): number | undefined {
  if (reader.isBlank("each")) reader.error("each", "the cell is blank; write how many one candle takes");
  const each = reader.number("each");
  return each === undefined ? undefined : reader.check("each", () => aboveZero("each", each));
}

/** Rows that name an item and no vessel, or a vessel and no item: no candle takes them. */
function ownerless(table: TableReader<ComponentField>): Problem[] {
  return table.rows.flatMap((reader) => {
    const lacks = (["vessel", "item"] as const).filter((field) => reader.isBlank(field));
    const [lack] = lacks;
    if (lack === undefined || lacks.length === 2) return [];
    return [reader.warning(lack, `${table.nameOf(lack)}: the cell is blank, so the row counts for no candle`)];
  });
}

function starter(): Starter {
  return {
    note: "What goes with each vessel and is counted: wicks, lid, label, box. A row for each item; Each is how many one candle takes.",
    columns: [
      { heading: "Vessel", width: 24, choices: ["Vessels", "Vessel"] },
      { heading: "Item", width: 24 },
      { heading: "Each", width: 10 },
    ],
  };
}
