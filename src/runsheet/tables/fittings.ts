import { sameName } from "../sameName";
import type { Component, Components } from "./components";
import type { Vessels } from "./vessels";
import { isThisWick, wickOf } from "./wick";

/** The tables that say what goes with a vessel. */
export interface FittingTables {
  /** For their approved wicks. */
  readonly vessels: Vessels;
  readonly components: Components;
}

/** Something that is counted into each candle of a vessel. */
export interface Fitting extends Pick<Component, "item" | "each"> {
  readonly kind: "wick" | "component";
}

/** What goes with a vessel: its approved wick, unless the components count it, and its components. */
export function fittingsOf(vessel: string, { vessels, components }: FittingTables): Fitting[] {
  const own = components.get(sameName(vessel)) ?? [];
  const wick = vessels.get(sameName(vessel))?.wick ?? "";
  const { name, each } = wickOf(wick);
  const isCounted = wick === "" || own.some(({ item }) => isThisWick(item, name));
  return [
    ...(isCounted ? [] : [{ kind: "wick", item: name, each } as const]),
    ...own.map(({ item, each }) => ({ kind: "component", item, each }) as const),
  ];
}
