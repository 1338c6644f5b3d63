import type { default as webpackModule } from "webpack";

const module = (text: string) => `data:text/javascript,${encodeURIComponent(text)}`;

/** Letters of the scripts of East Asia, and the blocks of their signs, as the package has them. */
const LETTERS =
  "(?=[\\p{Lo}\\p{Nl}\\p{So}\\p{Lm}])[\\p{Script=Han}\\p{Script=Katakana}\\p{Script=Hiragana}\\p{Script=Hangul}\\p{Script=Bopomofo}]";
const SIGNS =
  "[\\u2ff0-\\u303f\\u30a0-\\u30ff\\u3190-\\u319f\\u31c0-\\u31ef\\u3200-\\u33ff\\ufe10-\\ufe1f\\ufe30-\\ufe6f\\uff00-\\uffef]";

/** What stands in the place of packages that draw text documents: cells need little of them or nothing. */
export const REPLACED: Readonly<Record<string, string>> = {
  // Tables of all of Unicode, from which three short patterns were made at each start.
  "cjk-regex": `const of = (pattern) => () => ({ toRegExp: () => new RegExp(pattern, "u") });
export const letters = of(${JSON.stringify(LETTERS)});
export const all = of(${JSON.stringify(`(?:${LETTERS}|${SIGNS})`)});
export const punctuations = of(${JSON.stringify(`(?!${LETTERS})${SIGNS}`)});`,
  // Tells languages apart, to hyphenate.
  "franc-min": 'export const franc = () => "und";',
  // Reads files of fonts, to place letters by itself; the browser has its fonts already.
  "opentype.js": 'export const parse = () => { throw new Error("fonts are not read"); };',
};

/** Leaves parts of Univer out that no cell needs: a visitor would wait for them. */
export function leftOut(webpack: typeof webpackModule): webpackModule.NormalModuleReplacementPlugin[] {
  const { NormalModuleReplacementPlugin } = webpack;
  return [
    // Hyphenation patterns of 75 languages.
    new NormalModuleReplacementPlugin(/^\.\/[a-z]+(-[a-z0-9]+)*-[\w-]{8}\.js$/, (asked) => {
      if (/engine-render/.test(asked.context)) asked.request = module("export default null");
    }),
    // What the formula bar says of functions loads later (functionTexts.ts).
    new NormalModuleReplacementPlugin(/^@univerjs\/sheets-formula\/locale\/en-US$/, (asked) => {
      if (/preset-sheets-core/.test(asked.context)) asked.request = module("export default {}");
    }),
    new NormalModuleReplacementPlugin(/^(cjk-regex|franc-min|opentype\.js)$/, (asked) => {
      asked.request = module(REPLACED[asked.request] as string);
    }),
  ];
}
