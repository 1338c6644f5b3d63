/** Whether a text in a column of scents says that there is none: `Unscented`, `none`, `-`. */
export const isNoScent = (text: string): boolean => NONE.test(text.normalize("NFKC").replace(/[().]/g, "").trim());

const SCENT = "(scent|fragrance|perfume|aroma|oil|fo)s?";
const NONE = new RegExp(
  `^(un-?(scented|fragranced|perfumed)( candles?)?|(no|without)( any)?( added)? ${SCENT}( oil)?|${SCENT}[ -]?free|none|nil|nothing|n ?\\/ ?a|na|[-–—]+)$`,
  "i",
);
