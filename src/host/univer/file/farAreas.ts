import type { Area } from "../../../file/book";
import { same } from "../../../file/same";
import { type Extent, isAside } from "./areas";
import type { ById } from "./keptAsWas";

interface Rule {
  readonly areas: readonly Area[];
}

/** Rules with those areas of theirs that stay aside: Univer was not given them. */
export function withFarAreas<T extends Rule>(
  originals: ById<T>,
  before: ById<T>,
  now: ById<T>,
  extent: Extent,
): ById<T> {
  return new Map(
    [...now].map(([id, rule]) => {
      const old = before.get(id);
      if (!old || same(old.areas, rule.areas)) return [id, rule];
      const far = originals.get(id)?.areas.filter((area) => isAside(area, extent)) ?? [];
      return [id, { ...rule, areas: [...rule.areas, ...far] }];
    }),
  );
}
