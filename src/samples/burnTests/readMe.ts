import type { Sheet } from "../../sheet/sheet";
import { FUNCTIONS_NOTE, type Group, PAPER_NOTE, readMeSheet } from "../readMe";

const GROUPS: readonly Group[] = [
  {
    label: "The studio",
    look: "note",
    texts: [
      "Ostrelow is an invented studio. Its vessels, its wicks (W-15 to W-27, thicker and thicker) and every reading here are invented too: burn your own.",
      "Two series: four wicks in a straight tumbler (tests T-01 to T-12) and four in a small tin (S-01 to S-12), three candles of each, read every hour until 10 mm of wax were left.",
      "In the tumbler W-27 fails plainly: beyond the limits in three of three, by flames over 75 mm. W-24 fails: one of three sooted. W-18 is doubtful: nothing beyond the limits, but a pool to look at in three of three. W-21 is good: nothing beyond the limits in three of three, and nothing to look at.",
    ],
  },
  {
    label: "What is where",
    look: "note",
    texts: [
      "Wicks: by vessel what was seen of each wick, the rates side by side with a chart, and the thickness that a wanted rate asks for.",
      "Burn tests: a row for each candle, what was poured and what its readings come to. Readings: every look at every candle, as on its card.",
      "Vessels: what fills them, and the wick that you approve. Hot throw: two candles scored by a panel. Net weight: a small sample weighed by two rules.",
    ],
  },
  {
    label: "Change something and watch",
    look: "note",
    texts: [
      "Readings: make a flame higher, or write some soot, and the candle's row on Burn tests and its wick on Wicks follow. Change a weight, and the rate, its interval and the chart follow. A slip is said in the candle's row; all other candles count on.",
      "Burn tests and Readings: go on in the free rows. S-12 is not finished: burn it down.",
      "Wicks: the rate that is wanted, the vessel, or a wick in a free row. Hot throw: a score. Net weight: a weighing, the label or the size of the lot.",
      "On every sheet the pale cells with a frame are the ones to type in.",
    ],
  },
  {
    label: "How to burn",
    look: "note",
    texts: [
      "Cycles of at most 240 minutes with breaks of at least 60 follow EN 15426. EN 15493 allows a flame of 75 mm, of a tea light 30 mm (both second-hand: compare them with the standards).",
      "An hour an inch for the pool and a vessel of at most 60 C are common practice, no standard. EN 15426 burns down to 10 mm of wax; fire-safety guidance stops at half an inch (13 mm) in use.",
      "Trim the wick to about 6 mm before each cycle. Weigh before lighting and after the wax has set. Burn each wick once before any is burnt again, in an order like chance: what changes from day to day then falls on all alike.",
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
