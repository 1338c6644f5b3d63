import { list } from "../check/list";

/** Units by kind and short name, each with its usual spellings: in lower case, without dots and hyphens, a space between two. */
const SPELLINGS = {
  weight: {
    g: "g gr gm gms gram grams gramme grammes",
    kg: "kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes",
    oz: "oz ozs ounce ounces",
    lb: "lb lbs pound pounds",
  },
  volume: {
    ml: "ml mls millilitre millilitres milliliter milliliters",
    l: "l ltr ltrs litre litres liter liters",
    floz: "floz flozs usfloz flounce flounces fluidoz fluidounce fluidounces",
    in3: "in3 cuin cubicin cubicinch cubicinches inch3",
    cm3: "cm3 cc ccm cucm cubiccm cubiccentimetre cubiccentimetres cubiccentimeter cubiccentimeters",
  },
  length: {
    mm: "mm mms millimetre millimetres millimeter millimeters",
    cm: "cm cms centimetre centimetres centimeter centimeters",
    in: 'in ins inch inches " ″',
  },
  temperature: {
    C: "c °c degc degreec degreesc celsius degreecelsius degreescelsius centigrade",
    F: "f °f degf degreef degreesf fahrenheit degreefahrenheit degreesfahrenheit",
  },
} as const;

/** Volumes whose size differs from country to country, and others that nothing is worked out from. */
const OTHER_VOLUMES =
  /^(cl|dl|(tea|table)spoons?|tsps?|tbsps?|cups?|(us|imp)?(pts?|pints?|qts?|quarts?|gals?|gallons?))$/;

export type UnitKind = keyof typeof SPELLINGS;
export type UnitOf<K extends UnitKind> = keyof (typeof SPELLINGS)[K] & string;

const tidy = (text: string): string =>
  text
    .toLowerCase()
    .replace("³", "3")
    .replace(/[\s.^_-]/g, "");

/** What each spelling spells: no two units share one. */
const SPELT = new Map(
  Object.entries(SPELLINGS).flatMap(([kind, units]) =>
    Object.entries(units).flatMap(([unit, spellings]) =>
      (spellings as string).split(" ").map((spelling) => [spelling, { kind: kind as UnitKind, unit }] as const),
    ),
  ),
);

/** The text as it stands first: most are spelt the plain way. */
const spelt = (text: string) => SPELT.get(text) ?? SPELT.get(tidy(text));

/** The unit of a kind that a text spells, in its short name; undefined where it spells none. */
export function unitOf<K extends UnitKind>(kind: K, text: string): UnitOf<K> | undefined {
  const found = spelt(text);
  return found?.kind === kind ? (found.unit as UnitOf<K>) : undefined;
}

export const weightUnitOf = (text: string): UnitOf<"weight"> | undefined => unitOf("weight", text);
export const lengthUnitOf = (text: string): UnitOf<"length"> | undefined => unitOf("length", text);
export const temperatureUnitOf = (text: string): UnitOf<"temperature"> | undefined => unitOf("temperature", text);

/** The kind of a unit that a text spells; a volume need not be one that is worked out here. */
export function unitKindOf(text: string): UnitKind | undefined {
  return spelt(text)?.kind ?? (OTHER_VOLUMES.test(tidy(text)) ? "volume" : undefined);
}

/** The short names of the units of some kinds, in words: `mm, cm or in`. */
export const unitsInWords = (...kinds: readonly UnitKind[]): string =>
  list(kinds.flatMap((kind) => Object.keys(SPELLINGS[kind])));
