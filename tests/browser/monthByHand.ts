import { PlainSums } from "./plainSums";

/**
 * A month of a small studio in plain spreadsheet formulas, from the definitions of the trade alone: what the page shows
 * is compared with it. What a formula comes from stands beside it; where nothing does it is common practice, no source.
 */
export interface Month {
  readonly studio: {
    readonly loss: number;
    readonly waxFactor: number;
    readonly labourMinutes: number;
    readonly labourRate: number;
  };
  readonly vessels: readonly { readonly vessel: string; readonly water: number; readonly wicks: number }[];
  readonly scents: readonly { readonly scent: string; readonly load: number; readonly basis: "of wax" | "of total" }[];
  readonly packs: readonly Pack[];
  readonly receipts: readonly Receipt[];
  readonly runs: readonly { readonly run: string; readonly date: number }[];
  readonly lines: readonly Line[];
  readonly weighed: readonly Weighed[];
  /** Days on which the shelf is looked at, and for which run. */
  readonly looks: readonly { readonly date: number; readonly run: string }[];
  /** Which of them is the day on which packs are bought. */
  readonly shopping: number;
}

/** What came in, by the supplier's papers; those of an item by their age. */
export interface Receipt {
  readonly date: number;
  readonly item: string;
  readonly lot: string;
  readonly quantity: number;
  readonly paid: number;
}

/** Candles of one kind in a pot. Which of them fit together is the plan's choice. */
export interface Line {
  readonly run: string;
  readonly pot: string;
  readonly scent: string;
  readonly vessel: string;
  readonly count: number;
  readonly good: number;
}

/** An ingredient of a pot with the lot that was written, and how much more than planned was weighed of it. */
export interface Weighed {
  readonly run: string;
  readonly pot: string;
  readonly item: string;
  readonly lot: string;
  readonly over: number;
}

export interface Pack {
  readonly item: string;
  readonly supplier: string;
  readonly size: number;
  readonly price: number;
  readonly delivery: number;
}

/** Stands for a lot where none was written. */
export const NO_LOT = "none";

export const METHODS = ["first in", "average", "last paid"] as const;

export const monthByHand = (month: Month): PlainSums =>
  new PlainSums({ ...typed(month), ...pots(month), ...log(month), ...stock(month), ...costs(month), ...shop(month) });

const upper = (row: object): Record<string, string | number> =>
  Object.fromEntries(Object.entries(row).map(([key, value]) => [`${key[0]?.toUpperCase()}${key.slice(1)}`, value]));

/** Each once, by what makes it one. */
const once = <T extends object>(rows: readonly T[]): Record<string, string | number>[] =>
  [...new Map(rows.map((row) => [JSON.stringify(row), row])).values()].map(upper);

/** The share of scent in what is melted, by the words of its basis: of wax, or of wax and scent together. */
const LOAD = "SUMIFS(Scents[Load],Scents[Scent],{Scent})";
const SCENT_SHARE = `${LOAD}/(1+IF(COUNTIFS(Scents[Scent],{Scent},Scents[Basis],"of wax")=1,${LOAD},0))`;

/** How many of a counted item a run takes, spoilt candles too: a vessel, or the wicks in all of them. */
const COUNTED =
  'SUMIFS(Lines[Count],Lines[Run],{Run},Lines[Vessel],{Item})+IF({Item}="Wick",SUMIFS(Lines[Wicks],Lines[Run],{Run}),0)';

function typed({ studio, vessels, scents, receipts, runs }: Month) {
  return {
    Studio: {
      columns: {
        ...{ Loss: null, WaxFactor: null, LabourMinutes: null, LabourRate: null },
        Labour: "={LabourMinutes}/60*{LabourRate}",
      },
      rows: [upper(studio)],
    },
    Vessels: {
      // What wax weighs beside the water in its place.
      columns: { Vessel: null, Water: null, Wicks: null, Fill: "={Water}*Studio[WaxFactor]" },
      rows: vessels.map(upper),
    },
    Scents: { columns: { Scent: null, Load: null, Basis: null }, rows: scents.map(upper) },
    Runs: { columns: { Run: null, Date: null }, rows: runs.map(upper) },
    Receipts: {
      columns: { Date: null, Item: null, Lot: null, Quantity: null, Paid: null, Price: "={Paid}/{Quantity}" },
      rows: receipts.map(upper),
    },
  };
}

/** What is to be weighed for each pot, and what was. */
function pots({ lines, weighed }: Month) {
  const ofPot = (of: string) => `SUMIFS(Pots[${of}],Pots[Run],{Run},Pots[Pot],{Pot})`;
  return {
    Lines: {
      columns: {
        ...{ Run: null, Pot: null, Scent: null, Vessel: null, Count: null, Good: null },
        Date: "=SUMIFS(Runs[Date],Runs[Run],{Run})",
        Fill: "=SUMIFS(Vessels[Fill],Vessels[Vessel],{Vessel})",
        Poured: "={Count}*{Fill}",
        Wicks: "={Count}*SUMIFS(Vessels[Wicks],Vessels[Vessel],{Vessel})",
      },
      rows: lines.map(upper),
    },
    Pots: {
      columns: {
        ...{ Run: null, Pot: null, Scent: null },
        Melted: "=SUMIFS(Lines[Poured],Lines[Run],{Run},Lines[Pot],{Pot})*(1+Studio[Loss])",
        ExactScent: `={Melted}*${SCENT_SHARE}`,
        ExactWax: "={Melted}-{ExactScent}",
        // In whole grams that add up: the method of the largest remainder (Hamilton's).
        Total: "=ROUND({Melted},0)",
        Spare: "={Total}-INT({ExactWax})-INT({ExactScent})",
        Wax: "=INT({ExactWax})+IF({Spare}=2,1,IF(AND({Spare}=1,MOD({ExactWax},1)>=MOD({ExactScent},1)),1,0))",
        Oil: "={Total}-{Wax}",
      },
      rows: once(lines.map(({ run, pot, scent }) => ({ run, pot, scent }))),
    },
    Weighed: {
      columns: {
        ...{ Run: null, Pot: null, Item: null, Lot: null, Over: null },
        Planned: `=IF({Item}="Wax",${ofPot("Wax")},${ofPot("Oil")})`,
        Actual: "={Planned}+{Over}",
      },
      rows: weighed.map(upper),
    },
  };
}

/** A row of the log for each kind of candle: what is weighed once for a pot belongs to them as they were filled. */
function log({ lines }: Month) {
  const part = (of: string, item: string) =>
    `={Share}*SUMIFS(Weighed[${of}],Weighed[Run],{Run},Weighed[Pot],{Pot},Weighed[Item],${item})`;
  const all = (of: string) => `=SUMIFS(${of},Lines[Run],{Run},Lines[Scent],{Scent},Lines[Vessel],{Vessel})`;
  return {
    Parts: {
      columns: {
        ...{ Run: null, Pot: null, Scent: null, Vessel: null },
        Poured: "=SUMIFS(Lines[Poured],Lines[Run],{Run},Lines[Pot],{Pot},Lines[Vessel],{Vessel})",
        Share: "={Poured}/SUMIFS(Lines[Poured],Lines[Run],{Run},Lines[Pot],{Pot})",
        ...{ WaxPlanned: part("Planned", '"Wax"'), WaxActual: part("Actual", '"Wax"') },
        ...{ ScentPlanned: part("Planned", "{Scent}"), ScentActual: part("Actual", "{Scent}") },
      },
      // In the order of the lines, so that these can be asked with those.
      rows: lines.map(({ run, pot, scent, vessel }) => upper({ run, pot, scent, vessel })),
    },
    Log: {
      columns: {
        ...{ Run: null, Scent: null, Vessel: null },
        ...{ Candles: all("Lines[Count]"), Good: all("Lines[Good]"), Yield: "={Good}/{Candles}" },
        ...{ WaxPlanned: all("Parts[WaxPlanned]"), WaxActual: all("Parts[WaxActual]") },
        ...{ ScentPlanned: all("Parts[ScentPlanned]"), ScentActual: all("Parts[ScentActual]") },
        LoadAsWeighed: "={ScentActual}/{WaxActual}",
      },
      rows: once(lines.map(({ run, scent, vessel }) => ({ run, scent, vessel }))),
    },
  };
}

/** What goes out of each lot and what is left. Where a lot was written it is that one; else the oldest that has some. */
function stock({ receipts, runs, looks }: Month) {
  const lots = once(receipts.map(({ item, lot }) => ({ item, lot })));
  const items = once(receipts.map(({ item }) => ({ item })));
  const received = (of: string) =>
    `SUMIFS(Receipts[${of}],Receipts[Item],{Item},Receipts[Lot],{Lot},Receipts[Date],"<="&{Date})`;
  const weighed = (lot: string) =>
    `=SUMIFS(Weighed[Actual],Weighed[Run],{Run},Weighed[Item],{Item},Weighed[Lot],${lot})`;
  const ofLots = (of: string) => `SUMIFS(Lots[${of}],Lots[Date],{Date},Lots[Item],{Item})`;
  return {
    Uses: {
      columns: {
        ...{ Run: null, Date: null, Item: null, Lot: null },
        Before: `=${received("Quantity")}-SUMIFS({^Used},{^Item},{Item},{^Lot},{Lot})`,
        Written: weighed("{Lot}"),
        Unwritten: `${weighed(`"${NO_LOT}"`)}+${COUNTED}`,
        // The rows of an item stand by the age of its lots.
        Turn: "=MAX(0,MIN({Before}-{Written},{Unwritten}-SUMIFS({^Turn},{^Run},{Run},{^Item},{Item})))",
        Used: "={Written}+{Turn}",
      },
      rows: runs.flatMap((run) => lots.map((lot) => ({ ...upper(run), ...lot }))),
    },
    Lots: {
      columns: {
        ...{ Date: null, Item: null, Lot: null },
        In: `=${received("Quantity")}`,
        Left: '={In}-SUMIFS(Uses[Used],Uses[Item],{Item},Uses[Lot],{Lot},Uses[Date],"<="&{Date})',
        Price: `=IF({In}=0,0,${received("Paid")}/{In})`,
        Worth: "={Left}*{Price}",
        Needed: "=SUMIFS(Items[Needed],Items[Date],{Date},Items[Item],{Item})",
        // First in, first out.
        Taken: "=MAX(0,MIN({Left},{Needed}-SUMIFS({^Left},{^Date},{Date},{^Item},{Item})))",
        TakenCost: "={Taken}*{Price}",
      },
      rows: looks.flatMap(({ date }) => lots.map((lot) => ({ Date: date, ...lot }))),
    },
    Items: {
      columns: {
        ...{ Date: null, Run: null, Item: null },
        Needed: `=SUMIFS(Weighed[Planned],Weighed[Run],{Run},Weighed[Item],{Item})+${COUNTED}`,
        Left: `=${ofLots("Left")}`,
        Missing: "=MAX(0,{Needed}-{Left})",
        Last: '=MAXIFS(Receipts[Date],Receipts[Item],{Item},Receipts[Date],"<="&{Date})',
        LastPaid: "=SUMIFS(Receipts[Price],Receipts[Item],{Item},Receipts[Date],{Last})",
        Worth: `=${ofLots("Worth")}`,
        WorthLast: "={Left}*{LastPaid}",
        // What is needed beyond the stock costs what was paid last.
        FirstIn: `=IF({Needed}=0,0,(${ofLots("TakenCost")}+{Missing}*{LastPaid})/{Needed})`,
        Average: "=IF({Left}=0,{LastPaid},{Worth}/{Left})",
      },
      rows: looks.flatMap((look) => items.map((item) => ({ ...upper(look), ...item }))),
    },
  };
}

/** What a candle costs: materials and labour, over the share that comes out good in all runs that are logged. */
function costs({ looks, lines }: Month) {
  const price = (item: string) => {
    const by = (of: string) => `SUMIFS(Items[${of}],Items[Date],{Date},Items[Item],${item})`;
    return `IF({Method}="first in",${by("FirstIn")},IF({Method}="average",${by("Average")},${by("LastPaid")}))`;
  };
  const logged = (of: string) => `SUMIFS(Lines[${of}],Lines[Date],"<="&{Date})`;
  const kindsOf = (of: string) =>
    once(lines.flatMap(({ run, scent, vessel }) => (run === of ? [{ run, scent, vessel }] : [])));
  return {
    Costs: {
      columns: {
        ...{ Date: null, Method: null, Run: null, Scent: null, Vessel: null },
        Melted: "=SUMIFS(Vessels[Fill],Vessels[Vessel],{Vessel})*(1+Studio[Loss])",
        ScentEach: `={Melted}*${SCENT_SHARE}`,
        WaxEach: "={Melted}-{ScentEach}",
        WicksEach: "=SUMIFS(Vessels[Wicks],Vessels[Vessel],{Vessel})",
        Weighed: `={WaxEach}*${price('"Wax"')}+{ScentEach}*${price("{Scent}")}`,
        Counted: `=${price("{Vessel}")}+{WicksEach}*${price('"Wick"')}`,
        Good: `=IF(${logged("Count")}=0,1,${logged("Good")}/${logged("Count")})`,
        Each: "=({Weighed}+{Counted}+Studio[Labour])/{Good}",
        All: "={Each}*SUMIFS(Lines[Count],Lines[Run],{Run},Lines[Scent],{Scent},Lines[Vessel],{Vessel})",
      },
      rows: looks.flatMap(({ date, run }) =>
        METHODS.flatMap((Method) => kindsOf(run).map((kind) => ({ Date: date, Method, ...kind }))),
      ),
    },
  };
}

/** Of each pack none up to three. */
const MOST = 4;

/** All ways to buy, and of those that cover what is missing the one that costs least, with a delivery by supplier. */
function shop({ packs, looks, shopping }: Month) {
  const ways = Array.from({ length: MOST ** packs.length }, (_, way) =>
    Object.fromEntries(packs.map((_, p) => [`Of${p}`, Math.floor(way / MOST ** p) % MOST])),
  );
  const sumOf = (worth: (p: number) => string, isAsked: (pack: Pack) => boolean = () => true) =>
    packs.flatMap((pack, p) => (isAsked(pack) ? `{Of${p}}${worth(p)}` : [])).join("+");
  const each = (of: string) => (p: number) => `*INDEX(Packs[${of}],${p + 1})`;
  const missing = (item: string) => `SUMIFS(Items[Missing],Items[Date],${looks[shopping]?.date},Items[Item],"${item}")`;
  const covers = [...new Set(packs.map(({ item }) => item))].map(
    (item) => `${sumOf(each("Size"), (pack) => pack.item === item)}>=${missing(item)}`,
  );
  const deliveries = [...new Set(packs.map(({ supplier }) => supplier))].map((supplier) => {
    const isOrdered = `${sumOf(
      () => "",
      (pack) => pack.supplier === supplier,
    )}>0`;
    return `IF(${isOrdered},MAXIFS(Packs[Delivery],Packs[Supplier],"${supplier}"),0)`;
  });
  const typedCounts = Object.fromEntries(packs.map((_, p) => [`Of${p}`, null]));
  return {
    Packs: {
      columns: { Item: null, Supplier: null, Size: null, Price: null, Delivery: null },
      rows: packs.map(upper),
    },
    Ways: {
      columns: {
        ...typedCounts,
        Covers: `=IF(AND(${covers.join(",")}),1,0)`,
        Delivery: `=${deliveries.join("+")}`,
        Cost: `=ROUND(${sumOf(each("Price"))}+{Delivery},2)`,
        Best: "=IF(AND({Covers}=1,{Cost}=MINIFS(Ways[Cost],Ways[Covers],1)),1,0)",
      },
      rows: ways,
    },
    Basket: {
      columns: {
        ...Object.fromEntries(packs.map((_, p) => [`Of${p}`, `=SUMIFS(Ways[Of${p}],Ways[Best],1)`])),
        Delivery: "=SUMIFS(Ways[Delivery],Ways[Best],1)",
        // More than one would leave the choice open.
        Ways: "=SUM(Ways[Best])",
      },
      rows: [{}],
    },
  };
}
