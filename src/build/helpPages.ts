import type { Compiler, default as webpackModule } from "webpack";
import { escapeXml } from "../sheet/escapeXml";
import { type FunctionDoc, functionDocs } from "./functionDocs";
import { PARTS_IN_ORDER } from "./order";
import { RUN_SHEET_TITLE, runSheetHelp } from "./runSheetHelp";

/** Titles of the parts and what each page of a part warns of; a new face file gets its file name as title. */
const PARTS: Readonly<Record<string, { title: string; caution?: string }>> = {
  fill: {
    title: "Fill",
    caution: "A factor is an estimate until your own test pour has shown it. Leave room at the top of the vessel.",
  },
  scent: {
    title: "Scent",
    caution:
      "The scent supplier's safety data sheet and product limit, and the wax maker's maximum, come before any number worked out here. Mind the flash point.",
  },
  weighing: { title: "Weighing" },
  batch: {
    title: "Batch",
    caution: "Hot wax burns and catches fire. Never leave a melting pot alone, and never put water on a wax fire.",
  },
  buying: { title: "Buying" },
  cost: { title: "Cost and price" },
  burn: {
    title: "Burn tests",
    caution:
      "Test burns are watched from start to end, on a surface that cannot burn. A burn-test laboratory decides what is safe to sell; nothing here certifies a candle.",
  },
  wicks: {
    title: "Wicks",
    caution:
      "What a few candles showed proves no candle safe. A burn-test laboratory decides what is safe to sell; nothing here certifies a candle.",
  },
  label: {
    title: "Label",
    caution:
      "Local rules on labels and net contents decide. This is no official inspection and no legal advice; ask your weights and measures office.",
  },
};

const STYLE = `
:root { color-scheme: light dark; --ink: #2b2520; --soft: #6a6058; --page: #fffdf9; --line: #d9cfc0; --tint: #f6efe3; --link: #7a3b0c; }
@media (prefers-color-scheme: dark) { :root { --ink: #f1e9df; --soft: #b9aea2; --page: #1d1916; --line: #4a4039; --tint: #2a2420; --link: #f0b27a; } }
body { margin: 0 auto; padding: 1.5rem 1rem 4rem; max-width: 46rem; font: 1rem/1.55 system-ui, sans-serif; color: var(--ink); background: var(--page); }
a { color: var(--link); } h1 { font-size: 1.5rem; margin: .5rem 0; overflow-wrap: anywhere; } h2 { font-size: 1.1rem; margin: 1.75rem 0 .5rem; } h3 { font-size: 1rem; margin: 1.5rem 0 .25rem; }
code { font-family: ui-monospace, monospace; overflow-wrap: anywhere; } .formula { display: block; padding: .75rem; background: var(--tint); border: 1px solid var(--line); border-radius: 6px; }
table { border-collapse: collapse; } td, th { border: 1px solid var(--line); padding: .35rem .6rem; text-align: left; vertical-align: top; }
.grid td { background: var(--tint); font-variant-numeric: tabular-nums; } .caution { border-left: 4px solid var(--link); padding: .25rem .75rem; background: var(--tint); }
.soft { color: var(--soft); } dt { font-weight: 600; margin-top: .6rem; } dd { margin: 0 0 0 1rem; } ul { padding-left: 1.2rem; }
`;

/** Writes help/<ID>.html for every function, help/run-sheet.html, and help/index.html. */
export function helpPages(webpack: typeof webpackModule) {
  return (compiler: Compiler) => {
    compiler.hooks.thisCompilation.tap("HelpPages", (compilation) => {
      compilation.hooks.processAssets.tap("HelpPages", () => {
        const docs = functionDocs();
        const write = (name: string, html: string) =>
          compilation.emitAsset(`help/${name}.html`, new webpack.sources.RawSource(html));
        for (const doc of docs) write(doc.id, functionPage(doc));
        write("run-sheet", page(RUN_SHEET_TITLE, runSheetHelp()));
        write("index", indexPage(docs));
      });
    });
  };
}

function page(title: string, body: string): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeXml(title)}</title>
<link rel="icon" href="../icons/icon-32.png">
<style>${STYLE}</style>
</head>
<body>
${body}
</body>
</html>
`;
}

function functionPage(doc: FunctionDoc): string {
  const part = PARTS[doc.part];
  const syntax = doc.parameters.map(({ name, optional }) => (optional ? `[${name}]` : name)).join(", ");
  const parameters = doc.parameters
    .map(({ name, text, optional }) => {
      const may = optional ? ' <span class="soft">(may be left out)</span>' : "";
      return `<dt><code>${name}</code>${may}</dt><dd>${escapeXml(text)}</dd>`;
    })
    .join("\n");
  const examples = doc.examples.map(
    ({ formula, result }) => `<code class="formula">${escapeXml(formula)}</code>
<p>gives</p>
<table class="grid"><tbody>${result
      .map((row) => `<tr>${row.map((cell) => `<td>${escapeXml(String(cell))}</td>`).join("")}</tr>`)
      .join("")}</tbody></table>`,
  );
  return page(
    `POUR.${doc.id}`,
    `<nav><a href="index.html">All functions</a></nav>
<main>
<h1>POUR.${doc.id}</h1>
<p>${escapeXml(doc.purpose)}</p>
<code class="formula">=POUR.${doc.id}(${syntax})</code>
<h2>Arguments</h2>
<dl>
${parameters}
</dl>
<h2>Result</h2>
<p>${escapeXml(doc.returns)}</p>
<h2>Example</h2>
${examples.join("\n")}
${part?.caution ? `<h2>Take care</h2>\n<p class="caution">${escapeXml(part.caution)}</p>` : ""}
<h2>Where it comes from</h2>
<p>${escapeXml(doc.source)}</p>
</main>`,
  );
}

function indexPage(docs: readonly FunctionDoc[]): string {
  const there = new Set(docs.map(({ part }) => part));
  const parts = [...new Set([...PARTS_IN_ORDER, ...there])].filter((part) => there.has(part));
  const lists = parts.map((part) => {
    const items = docs
      .filter((doc) => doc.part === part)
      .map(({ id, purpose }) => `<li><a href="${id}.html"><code>POUR.${id}</code></a> ${escapeXml(purpose)}</li>`);
    return `<h2>${escapeXml(PARTS[part]?.title ?? part)}</h2>\n<ul>\n${items.join("\n")}\n</ul>`;
  });
  return page(
    "Pourwright help",
    `<main>
<h1>Pourwright help</h1>
<p><a href="run-sheet.html">${RUN_SHEET_TITLE}</a></p>
<h2>Functions</h2>
<p>Type any of these in a cell. A range fills down by itself; a blank row stays blank; an error stands in its own cell and says what to fix.</p>
<h2>For every function</h2>
<ul>
<li>Weights come out in the unit they went in, unless the function takes a unit. <code>floz</code> is the US fluid ounce, a volume and not a weight.</li>
<li>A load is a share of scent (fragrance oil): <code>"of wax"</code> (scent / wax) unless you write <code>"of total"</code> (scent / everything).</li>
<li>Rates are fractions or percentages below 100 %: <code>6%</code> or <code>0.06</code>, never 6.</li>
<li>Units: g kg oz lb, ml l floz in3 cm3, mm cm in, C F, in any usual spelling: <code>grams</code>, <code>fl oz</code>, <code>inch</code>, <code>lbs</code>.</li>
</ul>
<h2>Keys in the browser's own spreadsheet</h2>
<ul>
<li><kbd>F6</kbd> goes round cells, pane and the head of the page, <kbd>Shift</kbd>+<kbd>F6</kbd> the other way.</li>
<li><kbd>F1</kbd> opens the help page of the function being typed, or of the one in the selected cell.</li>
</ul>
${lists.join("\n")}
</main>
<footer><p class="soft"><a href="../notices.txt">Third-party code and its licences</a></p></footer>`,
  );
}
