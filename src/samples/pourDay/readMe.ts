import type { Sheet } from "../../sheet/sheet";
import { type Group, readMeSheet } from "../readMe";

const GROUPS: readonly Group[] = [
  {
    label: "The studio",
    look: "note",
    texts: [
      "Ostrelow is an invented studio. Its vessels, scents, loads, limits and stock are invented too: replace them, do not pour by them.",
      "Two people pour there on Thursdays in an old boat shed. This Thursday it is a hundred candles or so for a winter fair.",
    ],
  },
  {
    label: "Change something and watch",
    look: "note",
    texts: [
      "Vessels: a water weight. The fill follows, and with it the batch, the pots and the shelf.",
      "Scents: a load or its basis. Wax and scent of each candle follow; Check speaks up when a limit is passed.",
      "Batch: a quantity, a vessel or a scent. Totals and pots follow. Free rows stay blank until they are filled in.",
      "Pots: the capacity, the loss or the scent to plan. The plan is made anew.",
      "On every sheet the pale cells with a frame are the ones to type in.",
    ],
  },
  {
    label: "With care",
    look: "caution",
    texts: [
      "Hot wax burns skin and catches fire: never leave it unattended, and never put water on burning wax.",
      "The wax's and the scent's own documents decide on loads, temperatures and flash points, not this sheet.",
      "Test-burn every vessel, wick and scent together. Rules for making, labelling and selling differ from place to place.",
    ],
  },
  {
    label: "Functions",
    look: "note",
    texts: [
      "Formulas that begin with POUR. are worked out by the Pourwright add-in. Without it the cells keep the figures last saved.",
      "All weights here are in grams; any one unit of weight would do, the same in all the sheets.",
    ],
  },
];

/** The first sheet: whose numbers these are, what to try, and the cautions. */
export const readMe = (): Sheet => readMeSheet("A pour day at Ostrelow", GROUPS);
