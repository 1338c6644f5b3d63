import { sameName } from "../sameName";
import { fittingsOf } from "./fittings";
import { isNoScent } from "./isNoScent";
import type { ReadTables } from "./readTables";
import type { Ingredient } from "./recipes";
import type { KnownItem } from "./tableType";

/** Everything that other tables name and that is bought, each once: what is weighed before what is counted. */
export function knownItems({ pour, recipes, scents, vessels, components }: ReadTables["rows"]): KnownItem[] {
  const lines = (pour?.rows ?? []).filter(({ vessel }) => vessel.value);
  const poured = lines.map(({ scent }) => scent.value ?? "");
  const ingredients = [...(recipes?.values() ?? [])].flatMap((recipe) => recipe.ingredients);
  const named = [...poured, ...[...(scents?.values() ?? [])].map(({ name }) => name)];
  // A scent without a recipe is one wax, called so, and itself.
  const whole = named.filter((scent) => !recipes?.has(sameName(scent)));
  const isPlain = !recipes?.size || poured.some((one) => whole.includes(one));
  // A name for candles without scent is nothing that is bought.
  const isUnscented = (scent: string) => isNoScent(scent) || scents?.get(sameName(scent))?.notes.load === 0;
  const tables = { vessels: vessels ?? new Map(), components: components ?? new Map() };
  const wicks = [...tables.vessels.values()].flatMap(({ vessel }) =>
    fittingsOf(vessel, tables).filter(({ kind }) => kind === "wick"),
  );
  const all: KnownItem[] = [
    ...ingredients.filter(({ basis }) => basis === "part").map(({ name }) => ({ item: name, kind: "wax" })),
    ...(isPlain ? [{ item: "Wax", kind: "wax" }] : []),
    ...ingredients.filter(({ basis }) => basis !== "part").map((one) => ({ item: one.name, kind: kindOf(one) })),
    ...whole.filter((scent) => !isUnscented(scent)).map((item) => ({ item, kind: "scent" })),
    ...[...(vessels?.values() ?? [])].map(({ vessel }) => ({ item: vessel, kind: "vessel" })),
    ...lines.map(({ vessel }) => ({ item: vessel.value ?? "", kind: "vessel" })),
    ...wicks.map(({ item }) => ({ item, kind: "component" })),
    ...[...(components?.values() ?? [])].flat().map(({ item }) => ({ item, kind: "component" })),
  ];
  const found = new Map<string, KnownItem>();
  for (const one of all) if (one.item !== "" && !found.has(sameName(one.item))) found.set(sameName(one.item), one);
  return [...found.values()];
}

const kindOf = ({ name, isScent }: Ingredient): string =>
  isScent ? "scent" : /\b(dye|colou?r|pigment|mica)/i.test(name) ? "dye" : "additive";
