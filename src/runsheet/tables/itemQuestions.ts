import { has, orLeave, type Question, type UnreadColumn } from "./questions";

/** What is asked about columns of items that nobody reads: packs, prices and days in other words than those known. */

/** Words of what an item is sold in. */
const PACKS = [
  "pack",
  "packs",
  "case",
  "cases",
  "crate",
  "crates",
  "pail",
  "drum",
  "carton",
  "bottle",
  "jug",
  "bag",
  "tub",
];
/** Money that is not what an item costs the maker, or is something of the whole shelf. */
const OTHER_MONEY = [
  "selling",
  "sale",
  "retail",
  "wholesale",
  "asking",
  "ask",
  "value",
  "total",
  "delivery",
  "shipping",
];
/** Words beside which a pack is no size or price of it. */
const NOT_OF_PACK = ["number", "minimum", "maximum", "colour", "color", "note", "notes", "supplier", "date", "order"];

const isMoney = (column: UnreadColumn): boolean =>
  (has(column, ["price", "cost"]) || /\p{Sc}/u.test(column.heading)) && !has(column, OTHER_MONEY);
const isOfPack = (column: UnreadColumn): boolean => has(column, PACKS) && !has(column, NOT_OF_PACK);

const ASK_PACK_PRICE: Question = {
  isAsked: (column) =>
    column.isNumeric && isMoney(column) && isOfPack(column) && column.columnOf("packPrice") === undefined,
  text: () => orLeave("the price of a pack"),
  isOfAny: true,
};
const ASK_PRICE: Question = {
  isAsked: (column) =>
    column.isNumeric && isMoney(column) && !isOfPack(column) && column.columnOf("price") === undefined,
  text: () => orLeave("the unit price"),
  isOfAny: true,
};
const ASK_PACK_SIZE: Question = {
  isAsked: (column) =>
    column.isNumeric && isOfPack(column) && !isMoney(column) && column.columnOf("packSize") === undefined,
  text: () => orLeave("the pack size"),
};
const ASK_BEST_BEFORE: Question = {
  isAsked: (column) => column.isFilled && BEST_BEFORE.test(column.heading),
  text: () =>
    "is not read here: what is past its day counts as on hand all the same. Write it with its lot in the table of moves, or leave the column out",
  isOfAny: true,
};
const BEST_BEFORE = /\b(best[\s-]*(before|by)|bb[de]?|use[\s-]*by|exp(iry|ires|iration)?\b)/i;

export const ITEM_QUESTIONS: readonly Question[] = [ASK_PACK_PRICE, ASK_PRICE, ASK_PACK_SIZE, ASK_BEST_BEFORE];
