import type { Field } from "./headings/field";
import { VESSEL_WORDS } from "./headings/headingWords";

/** Fields that tables of several types have. */

export const VESSEL: Field = {
  name: "Vessel",
  reads: "name",
  aliases: [...VESSEL_WORDS.slice(1), "candle", "product", "item name", "holder"],
  alone: ["name", "item", "sku", "size", "vessels", "containers", "jars", "tins", "candles", "products"],
  not: ["scent", "wax"],
};
export const WATER: Field = {
  name: "Water weight",
  reads: "weight",
  aliases: ["water", "water each", "water weight each"],
  not: ["wax", "scent"],
};
export const FACTOR: Field = {
  name: "Wax factor",
  reads: "factor",
  aliases: ["factor", "fill factor", "water to wax", "wax to water", "wax for one of water"],
};
export const SCENT: Field = { name: "Scent", reads: "name", aliases: ["scent name", "fragrance", "oil"] };
export const LOAD: Field = {
  name: "Load",
  reads: "share",
  aliases: ["scent load", "scent %", "fragrance load", "fragrance %", "oil load", "oil %", "scent rate", "load %"],
  alone: ["%", "scent amount %", "scent added %"],
  not: ["wax"],
};
export const BASIS: Field = {
  name: "Basis",
  reads: "words",
  aliases: ["load basis", "scent basis", "% basis"],
  alone: ["of", "load of", "% of", "based on"],
};
export const ITEM: Field = {
  name: "Item",
  reads: "name",
  aliases: ["material", "ingredient", "item name", "supply"],
  alone: ["name", "what", "product", "description", "thing", "wax", "scent"],
};
