import { BURN_CAUTIONS, stopAt } from "../runsheet/burnCautions";
import { escapeXml } from "../sheet/escapeXml";

const { place, glass, lead, soot, wicks, deciding } = BURN_CAUTIONS;

/** The part of the run sheet's help page that is about wicks and their tests. */
export const burnTestHelp = (): string => `<h2>Burn tests and wicks</h2>
<p>The view <b>Tests</b> plans a series: some candles of each wick, in one vessel, wax, scent (fragrance oil) and load. <b>Write the series</b> adds a row for each candle to Burn tests, its readings to fill in, and a sheet of cards to print, a candle each. The order looks like chance and is the same each time.</p>
<ul>
<li>Three candles of a wick without a fault still leave a fault rate of up to 64 % possible (one-sided 95 %, exact binomial); six, up to 40 %.</li>
<li>A cycle is 240 minutes at most, with a break of 60 or more behind it, until 10 mm of wax are left (EN 15426; cycle and break second-hand). Look at the candle each hour, and read flame, pool, soot and glass temperature (common practice, no source).</li>
<li>A candle is finished when all of that was read and 10 mm are left. Until then it passes nothing.</li>
</ul>
<p><b>Read a series</b> shows of each wick what its candles showed, in how many, what is still possible, and what would make it surer. It follows the readings.</p>
<p><b>Approve</b>, beside a wick, writes it into the row of its vessel in Vessels, and nothing else. It holds for what was burnt: the wax and the loads of its candles, which stay in Burn tests.</p>
<ul>
<li>A wick of which any candle of the series was beyond the limits is refused; so is one without a finished candle.</li>
<li>You are asked first where a candle is not finished, fewer than three are, something is to look at, a reading has a remark, the wick failed in another series, or another wick stands there.</li>
<li>The next run sheet names the wick beside its vessel and counts it as a component. Check begins with <code>not tested</code> where a vessel is poured with another wick, in another wax or at a load outside of what was burnt, and names the nearest test; it also says where the candles at that load were not finished, or beyond the limits.</li>
<li>Nothing here calls a candle safe: it says what was seen, in how many.</li>
</ul>
<p>Of burning a test:</p>
<ul>
${[place, stopAt(false), glass, lead, soot].map(line).join("\n")}
<li>Tea lights: the flame may be 30 mm high at most, other container candles 75 mm (EN 15493, second-hand). Write <code>tea light</code> in the column Product of Burn tests, or choose it in the view <b>Tests</b>.</li>
<li>Two wicks or more in one vessel: write how many, such as <code>2 x Size 6</code>. That is another wick than one of it, in tests, in stock and in what is approved.</li>
${[wicks, deciding].map(line).join("\n")}
<li>What your suppliers write of their wax, wicks and vessels, and your local rules, come before all of this.</li>
</ul>`;

function line(text: string): string {
  return `<li>${escapeXml(text)}</li>`;
}
