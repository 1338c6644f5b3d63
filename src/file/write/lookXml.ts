import type { Condition } from "../book";
import { fontXml } from "./fontXml";
import { element } from "./rawXml";

/** What a condition lays over the look of cells. */
export function lookXml(name: "dxf" | "x14:dxf", { font, fill }: NonNullable<Condition["look"]>): string {
  const filled = fill ? element("fill", {}, element("patternFill", {}, element("bgColor", { rgb: `FF${fill}` }))) : "";
  return element(name, {}, font ? fontXml("over", font) : "", filled);
}
