import { COUNTED, once, upper } from "./formulas";
import { type Month, NO_LOT } from "./month";

/** What goes out of each lot and what is left. Where a lot was written it is that one; else the oldest that has some. */
export function stock({ receipts, runs, looks }: Month) {
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
