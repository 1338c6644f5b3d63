import { isError, type Problem } from "../problem";
import { sameName } from "../sameName";
import type { Use } from "../tables/byUse";
import type { Moves } from "../tables/moves";

/** What keeps the moves of an item from being added up. */
export const moveErrors = ({ said, saidOfAll }: Moves, item: string, use: Use): Problem[] =>
  [...(said.get(sameName(item)) ?? []), ...saidOfAll[use]].filter(isError);
