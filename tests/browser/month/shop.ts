import { upper } from "./formulas";
import type { Month, Pack } from "./month";

/** Of each pack none up to three. */
const MOST = 4;

/** All ways to buy, and of those that cover what is missing the one that costs least, with a delivery by supplier. */
export function shop({ packs, looks, shopping }: Month) {
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
