/** Two series of burn tests: what an invented studio wrote down, hour by hour. All of it is invented. */

/** Lengths in mm, weights in g. */
export interface Vessel {
  readonly vessel: string;
  readonly width: number;
  /** Wax that was poured, from the surface down. */
  readonly depth: number;
  /** Water to where the wax stands, and wax weight for one of water. */
  readonly water: number;
  readonly factor: number;
  readonly empty: number;
}

export interface Wick {
  readonly wick: string;
  readonly thickness: number;
}

export interface Candle extends Wick, Vessel {
  readonly test: string;
  /** The day of its first cycle, in 2026. */
  readonly burnOn: readonly [month: number, day: number];
}

/** A look at a candle; what was not read is null. */
export interface Look {
  readonly test: string;
  readonly cycle: number;
  readonly minutes: number;
  readonly weight: number | null;
  readonly flame: number | null;
  readonly pool: number | null;
  readonly left: number | null;
  readonly soot: string | null;
  readonly glass: number | null;
  readonly remarks: string | null;
}

/** How candles with a wick burn in a cycle: what was read after one to four hours, in mm and C. */
interface Habit extends Wick {
  readonly flames: readonly number[];
  readonly pools: readonly number[];
  readonly glass: readonly number[];
  /** Weight lost an hour, candle by candle. */
  readonly rates: readonly number[];
}

interface Series extends Vessel {
  readonly code: string;
  readonly days: readonly (readonly [month: number, day: number])[];
  /** The wicks in the order in which they were burnt, once before any was burnt again. */
  readonly rounds: readonly string[];
  readonly wicks: readonly Habit[];
}

/** Lines of a heading: one that is cut off cannot be read. */
export const HEADING_LINES = 3;

const TUMBLERS: Series = {
  ...{ code: "T", vessel: "Straight tumbler", width: 70, depth: 42, water: 161.6, factor: 0.9, empty: 298 },
  days: [
    [10, 5],
    [10, 8],
    [10, 11],
  ],
  rounds: ["W-24 W-18 W-27 W-21", "W-18 W-21 W-24 W-27", "W-27 W-24 W-21 W-18"],
  wicks: [
    {
      ...{ wick: "W-18", thickness: 1.8, rates: [4.4, 4.7, 4.5] },
      ...{ flames: [15, 18, 19, 20], pools: [21, 40, 50, 56], glass: [34, 38, 41, 43] },
    },
    {
      ...{ wick: "W-21", thickness: 2.1, rates: [5.4, 5.7, 5.5] },
      ...{ flames: [21, 24, 27, 28], pools: [27, 50, 66, 70], glass: [36, 42, 46, 48] },
    },
    {
      ...{ wick: "W-24", thickness: 2.4, rates: [6.3, 6.7, 6.4] },
      ...{ flames: [29, 35, 39, 41], pools: [32, 58, 70, 70], glass: [38, 45, 50, 52] },
    },
    {
      ...{ wick: "W-27", thickness: 2.7, rates: [7.9, 7.4, 8.1] },
      ...{ flames: [58, 67, 72, 75], pools: [36, 62, 70, 70], glass: [42, 50, 55, 57] },
    },
  ],
};

const TINS: Series = {
  ...{ code: "S", vessel: "Small tin", width: 60, depth: 34, water: 96.1, factor: 0.9, empty: 28 },
  days: [
    [10, 14],
    [10, 17],
    [10, 20],
  ],
  rounds: ["W-18 W-24 W-15 W-21", "W-21 W-15 W-24 W-18", "W-15 W-18 W-24 W-21"],
  wicks: [
    {
      ...{ wick: "W-15", thickness: 1.5, rates: [2.6, 2.8, 2.7] },
      ...{ flames: [11, 13, 13, 12], pools: [18, 33, 41, 44], glass: [31, 34, 36, 37] },
    },
    {
      ...{ wick: "W-18", thickness: 1.8, rates: [3.4, 3.6, 3.3] },
      ...{ flames: [16, 20, 21, 22], pools: [25, 46, 60, 60], glass: [34, 39, 43, 45] },
    },
    {
      ...{ wick: "W-21", thickness: 2.1, rates: [3.9, 3.6, 4.1] },
      ...{ flames: [22, 26, 28, 29], pools: [29, 53, 60, 60], glass: [37, 43, 48, 50] },
    },
    {
      ...{ wick: "W-24", thickness: 2.4, rates: [4.6, 5, 4.7] },
      ...{ flames: [30, 37, 40, 42], pools: [34, 60, 60, 60], glass: [42, 51, 57, 59] },
    },
  ],
};

const LEFT = 10; // mm, where a candle is put out for good
const FLAME = 75; // mm
const HEAT = 60; // C
/** What no two readings have alike. */
const WOBBLE = [0, 1, -1, 0, 1, 0, -1, 1, 0, -1, 0];

/** Seen once, in one candle, in one cycle. */
const SOOT: Readonly<Record<string, string>> = { "T-07 3": "light soot at the rim" };
/** Still burning: cycles until now. */
const CYCLES: Readonly<Record<string, number>> = { "S-12": 3 };

type Burnt = Candle & { readonly number: number; readonly habit: Habit; readonly rate: number };

function candlesOf({ code, days, rounds, wicks, ...vessel }: Series): Burnt[] {
  return rounds.flatMap((round, r) =>
    round.split(" ").map((name, i) => {
      const habit = wicks.find(({ wick }) => wick === name) as Habit;
      const number = 4 * r + i + 1;
      return {
        ...vessel,
        ...{ test: `${code}-${String(number).padStart(2, "0")}`, wick: name, thickness: habit.thickness },
        ...{ burnOn: days[r] as [number, number], number, habit, rate: habit.rates[r] as number },
      };
    }),
  );
}

/** Cycle by cycle until the wax is down to what must stay, or the candle shows what ends a test. */
function looksOf(candle: Burnt): Look[] {
  const { test, width, depth, water, factor, empty, habit, rate, number } = candle;
  const leftAfter = (hours: number): number => Math.round(depth * (1 - (rate * hours) / (water * factor)));
  const start = empty + water * factor;
  const looks: Look[] = [];
  const unlit = { flame: null, pool: null, left: null, soot: null, glass: null, remarks: null };
  let before = tenth(start + number / 5);
  for (let cycle = 1; cycle <= (CYCLES[test] ?? 9); cycle++) {
    // Its wick was trimmed.
    const weight = cycle === 1 ? before : tenth(before - 0.1);
    looks.push({ test, cycle, minutes: 0, weight, ...unlit });
    for (let hour = 1; hour <= 4; hour++) {
      const wobble = (salt: number): number => WOBBLE[(3 * number + 5 * cycle + hour + salt) % WOBBLE.length] as number;
      const burnt = 4 * (cycle - 1) + hour;
      const most = habit.pools[hour - 1] as number;
      const flame = (habit.flames[hour - 1] as number) + Math.min(cycle - 1, 3) + wobble(0);
      const glass = (habit.glass[hour - 1] as number) + cycle - 1 + wobble(4);
      const isDown = leftAfter(burnt) <= LEFT;
      const isEnded = flame > FLAME || glass > HEAT;
      const isLast = hour === 4 || isDown || isEnded;
      before = tenth(start + number / 5 - rate * burnt + wobble(7) / 5);
      looks.push({
        ...{ test, cycle, minutes: 60 * hour, weight: isLast ? before : null, flame, glass },
        pool: most === width ? width : most + wobble(2),
        left: isLast ? leftAfter(burnt) : null,
        soot: isLast ? (SOOT[`${test} ${cycle}`] ?? "none") : null,
        remarks: isEnded ? "put out, test ended" : null,
      });
      if (isDown || isEnded) return looks;
    }
  }
  return looks;
}

const tenth = (weight: number): number => Math.round(10 * weight) / 10;

const BURNT = [TUMBLERS, TINS].flatMap(candlesOf);

export const CANDLES: readonly Candle[] = BURNT;
export const LOOKS: readonly Look[] = BURNT.flatMap(looksOf);
export const VESSELS: readonly (Vessel & { readonly wicks: readonly Wick[] })[] = [TUMBLERS, TINS];
