import type { Sheet } from "../../sheet/sheet";
import { FUNCTIONS_NOTE, type Group, PAPER_NOTE, readMeSheet } from "../readMe";

const GROUPS: readonly Group[] = [
  {
    label: "The studio",
    look: "note",
    texts: [
      "Ostrelow is an invented studio. Its vessels, scents (fragrance oils), recipes, loads, limits, temperatures, suppliers, lots, prices and fees are invented too: replace them, do not pour or price by them.",
      "Two people pour there on Thursdays in an old boat shed. This Thursday it is a hundred candles or so for a winter fair. Money is any one currency, the same on all the sheets.",
    ],
  },
  {
    label: "The job in order",
    look: "note",
    texts: [
      "1. Write once what you have: Vessels with the water they hold, Scents with their loads and limits, Recipes for blends, Items with the packs that you buy, Components that go with each vessel. All other sheets look it up there by name.",
      "2. What comes in and what it cost is a row on Moves; Stock in the pane adds it. On hand and the price of each item follow on Items.",
      "3. A new candle is one row on Candles: its fill, materials, components, cost, margin and net weight follow, and Check says what is missing. Margins draws the range.",
      "4. Write on Batch what to pour. In the pane (in Excel by the button Run sheet on the Home tab; in the browser it is there) press Write run sheet: it says what is missing and what to buy, and puts a new sheet in.",
      "5. Print that sheet as any other (in the browser by Print or save as PDF in the pane), pour from it, and write on it what was weighed, how many candles came out good and what one weighs.",
      "6. Type those figures into the same cells and press Log this pour. The pane makes the sheet of the runs log at the first pour and adds to it at each one; Moves counts down what was used, and the pane offers the wax factors that the log shows.",
      "7. Label says the net weight and the lot of a candle. Trace in the pane says where a lot went, such as W-0614 of Wax, and what went into a run, such as 2026-302-01.",
    ],
  },
  {
    label: "Change something and watch",
    look: "note",
    texts: [
      "Vessels: a water weight. The fill follows, and with it the batch, the pots, the shelf, and the cost and label of the candles.",
      "Scents: a load or its basis. Wax, scent and cost of each candle follow; Check says when a load is over a limit. Attic cedar is poured by its recipe: change both.",
      "Batch: a quantity, a vessel or a scent. Totals and pots follow, and the run sheet says which packs to buy, here of cedar oil.",
      "Moves: a change, what was paid, or a new row for a lot. What is on hand and what candles cost follow. Candles: prices from the packs, the margin, the fees, or how much dearer wax may become.",
      "Components: how many one candle takes. Its cost and what to fetch follow. Pots: the capacity, the loss or the scent to plan.",
      "On every sheet the pale cells with a frame are the ones to type in. Free rows stay blank until they are filled in.",
    ],
  },
  {
    label: "With care",
    look: "caution",
    texts: [
      "Hot wax burns skin and catches fire: never leave it unattended, and never put water on burning wax.",
      "The wax's and the scent's own documents decide on loads, temperatures and flash points, not this sheet.",
      "Test-burn every vessel, wick and scent together. Rules for making, labelling and selling, and taxes, differ from place to place; licensed practice comes before these figures.",
      "A cost is only what was counted: rent, insurance, tests, waste and tax are yours to add.",
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

/** The first sheet: whose numbers these are, the job in order, what to try, and the cautions. */
export const readMe = (): Sheet => readMeSheet("The candles of Ostrelow", GROUPS);
