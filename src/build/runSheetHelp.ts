import { CAUTIONS } from "../runsheet/cautions";
import { wordsOf } from "../runsheet/tables/headings/field";
import { TABLE_TYPES } from "../runsheet/tables/registry";
import type { TableType } from "../runsheet/tables/tableType";
import { escapeXml } from "../sheet/escapeXml";
import { burnTestHelp } from "./burnTestHelp";

export const RUN_SHEET_TITLE = "The run sheet and the tables it reads";

/** The body of the help page of the run sheet. In bold stands what the pane and the sheet themselves say. */
export const runSheetHelp = (): string => `<nav><a href="index.html">All functions</a></nav>
<main>
<h1>${RUN_SHEET_TITLE}</h1>
<p>The pane turns a table of vessels and quantities into a run sheet: what to weigh into each pot, at which temperatures, and what to pour from it. You print it, pour from it, write on it and keep it.</p>

<h2>Making a run sheet</h2>
<ol>
<li>Choose the table to pour from. If there is none, press <b>Add starter tables</b>. For cells that are no table, select them with their headings and press <b>Use the selected cells</b>.</li>
<li>Check <b>Settings</b>: the unit of the table's weights, what your <b>Scale reads to</b>, what your pot holds, the extra you melt for loss. The <b>Defaults for rows without their own values</b> are the wax factor, the load and its basis.</li>
<li>Read <b>Check</b>. It says by row what to fix and what to check; press a line to go to its cell.</li>
<li>Check the <b>Preview</b>: the pots, drawn, and what they add up to.</li>
<li>Press <b>Write run sheet</b>. It comes on a new sheet, named by its lot, such as <code>Run 2026-041-01</code>. Nothing is overwritten: a second press makes a second sheet, with the next number.</li>
</ol>
<p><b>Weights on the sheet</b> may be <b>live formulas</b>, which follow a count, a fill, a share or a figure of the head that you change on the sheet, or <b>plain numbers</b>, which stay. A change in the tables moves neither; what is missing from the shelf and what the run costs stay as planned on both.</p>

<h2>The tables and their headings</h2>
<p>A further table adds to the sheet when it bears its name below and has the columns it needs. One by another name is chosen under <b>More tables</b>.</p>
<p>A column is found by its heading: one of the words below, in any capitals, alone or among others; the earlier word counts more. Usual short forms are read too: FO, oil and fragrance for scent, wt for weight, qty or # for how many, max for maximum. A heading with a word such as each, total, cost or date means something else. A column that is not found, or found wrongly, is chosen under <b>Columns</b>.</p>
<ul>
<li>A heading that speaks of a limit (max, up to, recommended, allowed, cap and the like) is never read as a load or a weight. In the table of scents it is the wax maximum or the product limit, as it says; one that does not say is held as the wax maximum, the stricter one, and you are asked.</li>
<li>A weight of the wax or the scent alone is no fill weight. A heading such as <code>Load of total</code> must agree with the basis the load is taken on; <code>of candle</code>, <code>of batch</code> and <code>of wax and oil</code> mean of total.</li>
<li>A column that nothing reads and that looks needed, such as a percentage, a second load, a weight or a wick, is asked about by name. Choose it under <b>Columns</b>, or leave it out by the button beside the question. The sheet waits for your answer where a load or a fill would otherwise come from elsewhere.</li>
<li>Names of vessels, scents and items are the same in any capitals and with any number of spaces.</li>
</ul>
${Object.values<TableType>(TABLE_TYPES)
  .filter(({ isFormer }) => !isFormer)
  .map(tableHelp)
  .join("\n")}

<h2>Units</h2>
<ul>
<li>A heading names its unit in brackets or behind its words: g, kg, oz or lb in any usual spelling, such as <code>On hand (kg)</code>, <code>Water in grams</code> or <code>Price per lb</code>. Without one it is the unit of the setting <b>Weights in</b>; only a price of what is weighed must name its own. A column of units beside the numbers is not read: one that says another unit is asked about.</li>
<li>The table to pour from must be in the unit of the setting. Weights of other tables are converted.</li>
<li>No volume is taken for a weight: ml or fl oz in a heading means weighing, or <a href="FILLBYVOLUME.html"><code>POUR.FILLBYVOLUME</code></a>.</li>
<li>Loads, limits and shares are fractions or percentages: <code>6%</code> or <code>0.06</code>, never 6.</li>
</ul>

<h2>What Check says</h2>
<p>No sheet is written while something is to fix:</p>
<ul>
<li>a column that is needed and not there, an unread one that may be the load or the fill, or a weight's heading in another unit than the setting;</li>
<li>rows right below a table that are no part of it, until they are taken in or left out;</li>
<li>a row without a vessel or a fill, a quantity that is not whole, a cell that shows an error;</li>
<li>a candle that is more than a pot holds;</li>
<li>a load over the wax maximum or the product limit, or one that rounding on your scale pushes over the product limit;</li>
<li>an ingredient of less than half of what the scale reads to; a row of the scents or recipes that this run uses and that is wrong.</li>
</ul>
<p>It only asks you to check:</p>
<ul>
<li>a fill far from the others, a wax factor far from 0.86, a unit that is not known, a vessel or scent that stands twice;</li>
<li>a load that rounding pushes over the wax maximum, an ingredient of under twenty times what the scale reads to;</li>
<li>a scent that is added at its flash point or above, or is not in the table of scents: its limits are then not checked;</li>
<li>a vessel poured as no candle was burnt, where there is a table of burn tests: see below;</li>
<li>what no table of items or moves knows, or has no price; lots past their best before; what falls below its reorder level; a column that nothing reads.</li>
</ul>

<h2>What is on hand, what to buy, what it costs</h2>
<ul>
<li>An item that has rows in the table of moves has on hand what they add up to, whatever the table of items says. Another one has what stands in its column On hand; a blank one is not known, and that is said.</li>
<li>A lot whose best before is over is named and does not count. If you find it still good, add a row with a change of 0 and its new best before. Where no lot is written for what was used, the oldest that has some was taken.</li>
<li>Of the packs of an item those are chosen that cost least together, what each supplier asks for an order counted in. Less is left than its column Reorder below says: that is said, for all items.</li>
<li>A unit price is that of the lots in stock, where anything was written in Paid: <b>Unit price by the lots in stock</b> in the settings says whether the oldest count first, all at their mean, or what was paid last. Otherwise it is the one in the table of items, or that of the first pack.</li>
<li>A candle costs what its wax, scent and dye, its vessel and its components cost, the loss included, and your work where <b>Minutes of work on a candle</b> and <b>Labour for one hour</b> are set. Where a price lacks, it is named and no cost is shown.</li>
</ul>

<h2>Changing a live sheet</h2>
<p><b>Planned</b> is exact, <b>Fill each</b> is what the scale shows of it. A count, a fill, a share or a figure of the head that cannot be is said beside it or below the weights of its pot, begins with <b>Fix</b>, and becomes no weight: what would be made of it shows an error until it is right.</p>

<h2>Printing</h2>
<p>The sheet is laid out for the <b>Paper</b> of the settings. In the browser's own spreadsheet press <b>Print or save as PDF</b>; in Excel, <i>File</i> &gt; <i>Print</i>. Its first line, with the lot, stands on every page, and says whether the sheet is live. <b>Fetch and prepare</b> on page one lists all that the pots take, with boxes to tick; then each pot stands whole on its page. The cost is on the sheet only where <b>Cost on the sheet</b> says so.</p>

<h2>Writing on it after the pour</h2>
<ul>
<li><b>Actual</b>: what you weighed of each ingredient, and the <b>Lot used</b>. Once all of a pot are written, the load they make stands beside <b>as weighed</b>, and below it any limit it is over.</li>
<li><b>Actual temperature</b> and <b>Time</b>: of each step, as they were.</li>
<li><b>Good candles</b>: how many came out good. A blank is not counted; write 0 where none did.</li>
<li><b>Weight of one, without vessel</b>: the wax and scent of one candle. Where several are weighed write the lightest: <b>Net weight to declare</b> follows it.</li>
<li><b>Lot used</b>: the lot of each ingredient; two in one cell with a comma between. Those of vessels, wicks and other components are written in the list <b>Fetch and prepare</b>; the lot of an ingredient there holds for all pots that name none.</li>
<li><b>Notes: anything unusual</b>, and the names and dates. Notes, temperatures with their times, and <b>Made by</b> go into the log.</li>
</ul>

<h2>Logging what was poured</h2>
<p>The run sheet in front of you is the one that the buttons under <b>Written run sheets</b> act on, and each of them names it; or choose another one. Run sheets are known by their first line, so tabs may be renamed. Press <b>Log this pour</b>. Words for a weight, or more good candles than were poured, are to fix first. What may be a slip is asked about by row:</p>
<ul>
<li>what is missing of a pot, and a load as weighed that is over a limit;</li>
<li>a weight more than a tenth, and more than the scale reads to, away from the plan;</li>
<li>a candle above its vessel's water or below 0.7 of it: it may have been weighed with its vessel;</li>
<li>a candle more than a tenth away from its fill, or from others in the same vessel, in this run or in the log;</li>
<li>more poured from a pot than was melted in it; a second sheet with the same lot.</li>
</ul>
<p>Fix it, or go on. Below stands what logging will add: the rows of the runs log and, where there is a table Moves, each item and lot with what it gives up. Ingredients count as they were weighed, vessels, wicks and components by number, spoilt candles too. Where no lot is written the oldest that has some is taken, and that is said; where nothing is on hand the row has no lot. Without a table Moves nothing is counted; you may begin one with this pour. <b>Add these rows</b>, or <b>Log anyway</b> where something is doubtful, adds all of it in one step or nothing. The pane then says what became of the wax: what was melted, what was poured and the loss beside the planned one, and what it took for granted where not each candle was weighed.</p>
<p>The runs log is a table on a sheet of its own, which you may rename and sort. Each lot adds a row for each vessel, scent and load: candles and yield, wax and scent as planned and as weighed, the load as weighed, the wax factor shown. Pots of which nothing is written stay open: log them by the same press once they are poured. Rows are only added. To put a slip right, write on the run sheet what is right and press <b>Log this pour</b> again: rows that take back what was wrong and rows anew are shown, then added. A lot is never given twice, also when its sheet is gone.</p>
<p>For each vessel whose water and poured weight are known the pane shows the wax factor that all its logged pours make; each row is one pour. A factor from one pour says so; one that is known less well than ± 0.03 is not offered yet. What your scale rounds, as the setting says it reads to, counts in that: pours of the same weight are no surer than the scale. Pours that no wax makes (below 0.7 or above 1) are left out, and that is said. Your table of vessels changes only when you press for it.</p>

${burnTestHelp()}

<h2>Receiving</h2>
<p>Under <b>Receiving</b> write down what came in: the item (the names of your tables are offered), its lot, the quantity in any unit of weight or in pieces (2 x 5 for two packs of 5), what was paid for all of it, and its best before. The row that it makes is shown as you type; what is doubtful stands below it, such as a lot that came in before or a name that no table knows. One press adds it to the table Moves, in the unit of that table, or begins one.</p>

<h2>Sheets that are written</h2>
<ul>
<li><b>What has changed since</b> says what the tables would now make different. Limits, shelf and cost are not compared.</li>
<li><b>Rebuild</b> writes a new sheet from the tables as they are now, and says what differs. The old one stays.</li>
<li><b>Turn into plain numbers</b> keeps a live sheet's planned figures as they are. What follows your actual weights stays a formula.</li>
</ul>

<h2>Take care</h2>
<div class="caution">
${CAUTIONS.map((caution) => `<p>${escapeXml(caution)}</p>`).join("\n")}
</div>
</main>`;

/** What a table is for, what it needs, and the headings by which each of its columns is known. */
function tableHelp({ name, purpose, fields, needs }: TableType): string {
  const needed = needs.map((group) => group.map((field) => fields[field]?.name).join(" or ")).join("; ");
  const rows = Object.values(fields).map((field) => {
    const words = wordsOf(field).map(([word]) => word);
    return `<tr><th scope="row">${escapeXml(field.name)}</th><td>${escapeXml(words.join(", "))}</td></tr>`;
  });
  return `<h3>${escapeXml(name)}</h3>
<p>${escapeXml(purpose)}</p>
<p class="soft">Needs: ${escapeXml(needed)}.</p>
<table>
<thead><tr><th scope="col">Column</th><th scope="col">Headings</th></tr></thead>
<tbody>
${rows.join("\n")}
</tbody>
</table>`;
}
