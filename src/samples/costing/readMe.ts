import type { Sheet } from "../../sheet/sheet";
import { FUNCTIONS_NOTE, type Group, PAPER_NOTE, readMeSheet } from "../readMe";

const GROUPS: readonly Group[] = [
  {
    label: "The studio",
    look: "note",
    texts: [
      "Ostrelow is an invented studio. Its candles, recipes, packs, prices, fees and stock are invented too: replace them, do not price by them.",
      "It sells twenty candles: five scents (fragrance oils), alone or blended, and bare wax, in eight vessels. Every wax is a blend with soy wax in it.",
      "Money is any one currency, the same on all the sheets.",
    ],
  },
  {
    label: "Change something and watch",
    look: "note",
    texts: [
      "Prices: what the pack of soy wax costs. Cost, margin and asking price of every candle follow on the sheet Range, and Check says which prices to raise.",
      "Range: how much dearer wax may become, the target margin, a fee or a price. Margins draws it.",
      "Recipes: a share or its basis; the free rows take another recipe. Vessels: a fill, a lid or the minutes.",
      "Candles: another scent or vessel for a candle, or how many to make. To buy and Labels follow.",
      "Lots: what was used, or a new lot in a free row.",
      "On every sheet the pale cells with a frame are the ones to type in.",
    ],
  },
  {
    label: "How the sheets are linked",
    look: "note",
    texts: [
      "Names link the sheets: a recipe's ingredients, a candle's scent and vessel, and a vessel's components must be written as on their own sheets.",
      "Prices turns packs in kilograms, pounds and ounces into the price of a gram; Recipes says what is in a hundred grams; Weights what one candle takes; Candles multiplies the two.",
    ],
  },
  {
    label: "With care",
    look: "caution",
    texts: [
      "A cost is only what was counted: rent, insurance, tests, waste and tax are yours to add.",
      "The wax's and the scent's own documents decide on loads, not the recipes here. Test-burn every vessel, wick and recipe together.",
      "Rules for labelling, selling and tax differ from place to place; licensed practice comes before these figures.",
    ],
  },
  {
    label: "Functions and paper",
    look: "note",
    texts: [FUNCTIONS_NOTE, PAPER_NOTE],
  },
];

/** The first sheet: whose numbers these are, what to try, and the cautions. */
export const readMe = (): Sheet => readMeSheet("What the candles of Ostrelow cost", GROUPS);
