import type { Sheet } from "../../sheet/sheet";
import { FUNCTIONS_NOTE, type Group, PAPER_NOTE, readMeSheet } from "../readMe";

const GROUPS: readonly Group[] = [
  {
    label: "The studio",
    look: "note",
    texts: [
      "Ostrelow is an invented studio. Its candles and every reading here are invented too: burn your own.",
      "Five candles are on test, each for five cycles: one burns too hot, one too small, and one fills its pool a little late.",
    ],
  },
  {
    label: "Change something and watch",
    look: "note",
    texts: [
      "Readings: a weight, and the rate and the hours on the sheet Tests follow, with the chart. A flame or a pool, and the checks follow.",
      "Readings and Tests: fill in a free row, and the chart draws it too. A weight or a flame that was not taken stays blank and is left out. A slip is said in its row, and only that row is left out.",
      "Tests: the width of a vessel, its fill, or the depth of wax left.",
      "Net weight: a weighing, the label or the size of the lot.",
      "On every sheet the pale cells with a frame are the ones to type in.",
    ],
  },
  {
    label: "How to burn",
    look: "note",
    texts: [
      "Cycles of 240 minutes with breaks of at least 60 follow EN 15426. EN 15493 allows a flame of 75 mm, of a tea light 30 mm (both second-hand: compare them with the standards).",
      "An hour an inch for the pool is common practice, no standard. Stopping at half an inch (13 mm) of wax is fire-safety guidance: Tests works out what that weighs in each vessel.",
      "Trim the wick to about 6 mm before each cycle. Weigh before lighting and after the wax has set.",
    ],
  },
  {
    label: "With care",
    look: "caution",
    texts: [
      "Never leave a burning candle alone. Keep it away from whatever catches fire, from draughts, children and pets; at most four hours at a time.",
      "Put a candle out at once when its flame grows tall, its vessel becomes too hot to touch or cracks, or it smokes. Never put water on burning wax.",
      "These tables certify nothing: a burn-test laboratory and the standards themselves have the last word, and so has your weights and measures office.",
    ],
  },
  {
    label: "Functions and paper",
    look: "note",
    texts: [FUNCTIONS_NOTE, PAPER_NOTE],
  },
];

/** The first sheet: whose numbers these are, what to try, and the cautions. */
export const readMe = (): Sheet => readMeSheet("Burn tests at Ostrelow", GROUPS);
