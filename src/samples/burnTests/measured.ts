/** A candle on test: its vessel, the shape and inside width in cm, the wick, and grams of wax and scent together. */
export interface Test {
  readonly test: string;
  readonly vessel: string;
  readonly shape: string;
  readonly width: number;
  readonly wick: string;
  readonly fill: number;
  /** Weight with the vessel at the start, then at the end of each cycle, in grams. */
  readonly weights: readonly number[];
  /** Flame in mm and pool in cm: in the first cycle after one and two hours, then at the end of each cycle. */
  readonly flames: readonly number[];
  readonly pools: readonly number[];
}

export const TESTS: readonly Test[] = [
  {
    test: "A",
    vessel: "Straight tumbler",
    shape: "round",
    width: 7.4,
    wick: "Cotton, size 6",
    fill: 216,
    weights: [528.4, 506.9, 484.6, 462.8, 440.2, 418.3],
    flames: [24, 27, 31, 33, 34, 33, 35],
    pools: [3.2, 5.4, 7.4, 7.4, 7.4, 7.4, 7.4],
  },
  {
    test: "B",
    vessel: "Straight tumbler",
    shape: "round",
    width: 7.4,
    wick: "Cotton, size 10",
    fill: 216,
    weights: [531.2, 498.1, 463.7, 430.4, 396.2, 363.5],
    flames: [48, 57, 66, 71, 78, 81, 74],
    pools: [4.3, 7, 7.4, 7.4, 7.4, 7.4, 7.4],
  },
  {
    test: "C",
    vessel: "Medium tin",
    shape: "round",
    width: 7.6,
    wick: "Cotton, size 3",
    fill: 175,
    weights: [214.6, 202.1, 189.9, 177.2, 165.3, 153],
    flames: [12, 14, 15, 14, 13, 12, 12],
    pools: [2.2, 3.5, 5.1, 5.6, 5.8, 5.8, 5.7],
  },
  {
    test: "D",
    vessel: "Hexagon jar",
    shape: "hexagon",
    width: 6.8,
    wick: "Cotton, size 5",
    fill: 147,
    weights: [339.8, 321.9, 304.3, 286, 268.4, 250.7],
    flames: [21, 24, 27, 28, 30, 29, 31],
    pools: [3, 5.1, 6.8, 6.8, 6.8, 6.8, 6.8],
  },
  {
    test: "E",
    vessel: "Tall tumbler",
    shape: "round",
    width: 8.2,
    wick: "Cotton, size 7",
    fill: 271,
    weights: [672.3, 648.6, 624.1, 599.7, 575.8, 551.4],
    flames: [22, 26, 29, 31, 33, 34, 34],
    pools: [3, 5, 7.8, 8.2, 8.2, 8.2, 8.2],
  },
];
