import type { Sheet } from "../../sheet/sheet";
import { FUNCTIONS_NOTE, type Group, PAPER_NOTE, readMeSheet } from "../readMe";

const GROUPS: readonly Group[] = [
  {
    label: "The studio",
    look: "note",
    texts: [
      "Ostrelow is an invented studio. Its vessels, scents (fragrance oils), recipes, loads, limits, temperatures, suppliers, lots and prices are invented too: replace them, do not pour by them.",
      "Two people pour there on Thursdays in an old boat shed. This Thursday it is a hundred candles or so for a winter fair.",
    ],
  },
  {
    label: "Change something and watch",
    look: "note",
    texts: [
      "Vessels: a water weight. The fill follows, and with it the batch, the pots and the shelf.",
      "Scents: a load or its basis. Wax and scent of each candle follow; Check says when a load is over a limit. Attic cedar is poured by its recipe: change both.",
      "Batch: a quantity, a vessel or a scent. Totals and pots follow. Free rows stay blank until they are filled in.",
      "Moves: a change, or a new row for a lot. What is on hand follows on Items; the run sheet says what is missing and which packs cost least, here of cedar oil.",
      "Components: how many one candle takes. Its cost, what to fetch and what is missing follow.",
      "Pots: the capacity, the loss or the scent to plan. The plan follows.",
      "On every sheet the pale cells with a frame are the ones to type in.",
    ],
  },
  {
    label: "Make a run sheet",
    look: "note",
    texts: [
      "Open the pane: in Excel by the button Run sheet on the Home tab; in the browser it is there. It pours from Batch, looks into the other tables, and puts a new sheet in at Write run sheet.",
      "Print that sheet as any other (in the browser by Print or save as PDF in the pane), pour from it, and write on it what was weighed, how many candles came out good and what one weighs.",
      "Type those figures into the same cells of the sheet and press Log this pour: a runs log keeps them, Moves counts down what was used, and the pane offers the wax factors that they show.",
      "Stock in the pane shows each lot and what it is worth. Trace says where a lot went, such as W-0614 of Wax, and what went into a run, such as 2026-302-01.",
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
    label: "Functions and paper",
    look: "note",
    texts: [
      FUNCTIONS_NOTE,
      "All weights here are in grams; any one unit of weight would do, the same in all the sheets.",
      PAPER_NOTE,
    ],
  },
];

/** The first sheet: whose numbers these are, what to try, and the cautions. */
export const readMe = (): Sheet => readMeSheet("A pour day at Ostrelow", GROUPS);
