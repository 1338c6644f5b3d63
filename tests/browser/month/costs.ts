import { once, SCENT_SHARE } from "./formulas";
import { METHODS, type Month } from "./month";

/** What a candle costs: materials and labour, over the share that comes out good in all runs that are logged. */
export function costs({ looks, lines }: Month) {
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
