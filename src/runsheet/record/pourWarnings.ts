import { plain } from "../../core/check/plain";
import { largest, least } from "../../core/longLists";
import { FAR, formatWeight, isNoWax, isWaxFactor, POURED } from "../likelyWeight";
import { sameName } from "../sameName";
import { type Log, NO_LOG } from "../tables/runsLog";
import type { Vessels } from "../tables/vessels";
import { weightRatio } from "../tables/weightUnits";
import { formatMass, isOverPoured, massCheck } from "./massCheck";
import type { PouredLine, PouredPot, PouredRun } from "./poured";

/** Whether a weight is further from another than FAR, and the reading of the scale, explain. */
const isFar = (weight: number, from: number, noise = 0): boolean =>
  Math.abs(weight - from) > FAR * from * (1 + 1e-9) + noise;

/**
 * What is written on a poured sheet and may be a slip: to be asked about before it is logged, for a lot is logged once.
 * Each says where it stands, what is written, what was expected and what to do.
 */
export function pourWarnings(run: PouredRun, vessels: Vessels, log: Log = NO_LOG): string[] {
  const candles = run.pots.flatMap(({ lines }) =>
    lines.flatMap((line) => {
      const text = candleWarning(line, vessels.get(sameName(line.vessel))?.water, run);
      return text === undefined ? [] : [{ vessel: sameName(line.vessel), text }];
    }),
  );
  // A candle that is asked about already is not asked about once more for the sake of its sisters.
  const asked = new Set(candles.map(({ vessel }) => vessel));
  return [
    ...run.pots.flatMap(missing),
    ...run.pots.flatMap(({ title, remark }) => (remark === "" ? [] : [`${title}, as weighed: ${remark}`])),
    ...run.pots.flatMap((pot) => farParts(pot, run)),
    ...candles.map(({ text }) => text),
    ...sisters(run, vessels, log).flatMap(({ vessel, text }) => (asked.has(vessel) ? [] : [text])),
    ...run.pots.flatMap((pot) => overPoured(pot, run)),
  ];
}

/** What is not written of a pot. */
function missing({ title, parts, lines }: PouredPot): string[] {
  const lacking = (values: readonly (number | undefined)[], what: string) => {
    const lacks = values.filter((value) => value === undefined).length;
    if (lacks === 0) return [];
    return [lacks === values.length ? `no ${what}` : `${lacks} of ${values.length} without ${what}`];
  };
  const lacks = [
    ...lacking(
      parts.filter(({ planned }) => planned > 0).map(({ actual }) => actual),
      "actual weight",
    ),
    ...lacking(
      lines.map(({ good }) => good),
      "count of good candles",
    ),
  ];
  return lacks.length > 0 ? [`${title}: ${lacks.join(", ")}; write what is known`] : [];
}

/** Ingredients weighed in far from the plan; one step of the scale either way is none. */
function farParts({ parts }: PouredPot, { unit, division }: PouredRun): string[] {
  return parts.flatMap(({ row, label, planned, actual }) =>
    actual !== undefined && isFar(actual, planned, division)
      ? [
          `Row ${row}: ${label} is written as ${formatWeight(actual, unit)} and was planned as ${formatWeight(planned, unit)}; check the digits and the unit`,
        ]
      : [],
  );
}

/** What is odd about the weight of one candle: against the water of its vessel, else against its fill. */
function candleWarning({ row, vessel, fill, weighed }: PouredLine, water: number | undefined, { unit }: PouredRun) {
  if (weighed === undefined) return undefined;
  const begin = `Row ${row}: one ${vessel} is written to weigh ${formatWeight(weighed, unit)}`;
  const factor = water === undefined ? undefined : weighed / water;
  if (water !== undefined && factor !== undefined && !isWaxFactor(factor)) {
    const expected = `its vessel holds ${formatWeight(water, unit)} of water, so ${formatWeight(POURED.least * water, unit)} to ${formatWeight(POURED.most * water, unit)} was expected`;
    const why = isNoWax(factor) ? `; no wax weighs ${plain(Number(factor.toPrecision(3)))} for one of water` : "";
    const todo =
      factor > POURED.most
        ? "Was it weighed with its vessel? Take the vessel's weight off, or fix the water weight"
        : "Was it filled to the same line as the water, and weighed in this unit? Fix it or clear it";
    return `${begin}; ${expected}${why}. ${todo}`;
  }
  if (!isFar(weighed, fill)) return undefined;
  const todo = weighed > fill ? "Was it weighed with its vessel?" : "Was it filled to its line?";
  return `${begin}; the planned fill is ${formatWeight(fill, unit)}. ${todo} Weigh it again, or another one`;
}

interface Weighing {
  readonly where: string;
  readonly weight: number;
  /** What it was planned to weigh, as far as that is known. */
  readonly planned: number | undefined;
}

/** Candles of one vessel that weigh far from each other, in this run and beside earlier ones: a sentence for each vessel. */
function sisters(run: PouredRun, vessels: Vessels, log: Log): { vessel: string; text: string }[] {
  const written = run.pots.flatMap(({ lines }) => lines.map(({ vessel }) => [sameName(vessel), vessel] as const));
  // By the name that stands first.
  const names = new Map(written.reverse());
  return [...names].flatMap(([key, vessel]) => {
    const here = run.pots.flatMap(({ lines }): Weighing[] =>
      lines.flatMap(({ row, vessel, weighed, fill }) =>
        sameName(vessel) === key && weighed !== undefined
          ? [{ where: `in row ${row}`, weight: weighed, planned: fill }]
          : [],
      ),
    );
    const before = earlier(key, run, log, vessels.get(key)?.water);
    const ends = endsOf(here);
    const all = before ? [...ends, before] : ends;
    const pairs = ends.flatMap((one) =>
      all.filter((other) => one !== other && isApart(one, other)).map((o) => [one, o]),
    );
    const [worst] = pairs.sort((a, b) => spread(b) - spread(a));
    if (!worst) return [];
    const [one, other] = worst as [Weighing, Weighing];
    const [a, b] = [one, other].map(({ where, weight }) => `${formatWeight(weight, run.unit)} ${where}`);
    const text = `One ${vessel} weighs ${a} and ${b}: more than ${plain(FAR * 100)} % apart. Weigh them again without their vessels`;
    return [{ vessel: key, text }];
  });
}

/** Of those planned alike the lightest and the heaviest: no others are farther apart. */
function endsOf(weighings: readonly Weighing[]): Weighing[] {
  const ends = new Map<number | undefined, [lightest: Weighing, heaviest: Weighing]>();
  for (const one of weighings) {
    const [lightest, heaviest] = ends.get(one.planned) ?? [one, one];
    ends.set(one.planned, [
      one.weight < lightest.weight ? one : lightest,
      one.weight > heaviest.weight ? one : heaviest,
    ]);
  }
  const kept = new Set([...ends.values()].flat());
  return weighings.filter((one) => kept.has(one));
}

const spread = (pair: readonly Weighing[]): number => {
  const weights = pair.map(({ weight }) => weight);
  return largest(weights) / least(weights);
};

/**
 * Whether two weighings differ by more than FAR, whichever of the two makes them alike: vessels are filled to their
 * line whatever was planned, or filled as was planned then and now.
 */
function isApart(one: Weighing, other: Weighing): boolean {
  const ratio = one.planned && other.planned ? one.planned / other.planned : 1;
  const [low, high] = [Math.min(1, ratio), Math.max(1, ratio)];
  const [lightest, heaviest] = [other.weight * low, other.weight * high];
  return (
    (one.weight < lightest || one.weight > heaviest) && isFar(one.weight, one.weight < lightest ? lightest : heaviest)
  );
}

/** The middle one of the earlier pours of a vessel in the log, those left out that no wax shows. */
function earlier(key: string, run: PouredRun, log: Log, water: number | undefined): Weighing | undefined {
  const pours = log.rows
    .flatMap(({ vessel, lot, weighed, planned, unit, water: own }) => {
      if (sameName(vessel) !== key || lot === run.lot || weighed === undefined) return [];
      const ratio = weightRatio(unit && { weight: unit }, run.unit);
      return [{ weight: weighed * ratio, planned: planned && planned * ratio, water: own ? own * ratio : water }];
    })
    .filter(({ weight, water }) => water === undefined || isWaxFactor(weight / water))
    .sort((a, b) => a.weight - b.weight);
  const middle = pours[Math.floor((pours.length - 1) / 2)];
  const where = pours.length === 1 ? "in an earlier run of the log" : `in the middle of ${pours.length} logged before`;
  return middle && { ...middle, where };
}

/** More poured from a pot than was melted in it. */
function overPoured(pot: PouredPot, { division, unit }: PouredRun): string[] {
  const mass = massCheck([pot], division, unit);
  if (!mass || !isOverPoured(mass)) return [];
  return [
    `${pot.title}: more was poured than was melted: ${formatMass(mass, unit)}. Check the weights of one, the counts and the actual weights`,
  ];
}

/** What the log will say of the loss, pot by pot: nothing of a pot whose candles were not weighed. */
export function massReport(run: PouredRun): string[] {
  return run.pots.flatMap((pot) => {
    const mass = massCheck([pot], run.division, run.unit);
    return mass ? [`${pot.title}: ${formatMass(mass, run.unit)}`] : [];
  });
}
