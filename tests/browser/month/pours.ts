import { once, SCENT_SHARE, upper } from "./formulas";
import type { Month } from "./month";

/** What is to be weighed for each pot, and what was. */
export function pots({ lines, weighed }: Month) {
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
export function log({ lines }: Month) {
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
