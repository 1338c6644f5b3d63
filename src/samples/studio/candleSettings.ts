/** Where the settings above the table of candles stand, and what may be wrong with them. */

export const MARGIN = "Candles!$B$7";
export const FEES = "Candles!$B$8,Candles!$B$9";
export const [HOUR, REJECTS, DEARER, STYLE] = ["$B$5", "$B$6", "$B$10", "$B$11"] as const;

/** What the prices come from is one of two words: any other would be taken for one of them. */
const pricesFrom = (word: string): string => `TRIM(Candles!$B$4)="${word}"`;
export const isFromPack = pricesFrom("pack");
export const isPricesFromWrong = `NOT(OR(${pricesFrom("last paid")},${isFromPack}))`;
export const PRICES_FROM_WORDS = 'Prices from: write ""last paid"" or ""pack"".';

/** The figures, from labour to dearer wax, and their names. */
const [NAMES, FIGURES, MONEY_OR_SHARES, SHARES] = ["$A$5:$A$10", "$B$5:$B$10", "$B$5:$B$9", "$B$6:$B$8"];
/** A blank would count as 0 in every cost. */
export const WRONG_SETTING = `IF(${isPricesFromWrong},"${PRICES_FROM_WORDS}",IF(COUNT(${FIGURES})<6,INDEX(${NAMES},MATCH(0,INDEX(ISNUMBER(${FIGURES})*1,0),0))&": write a number, 0 for none.",IF(MIN(${MONEY_OR_SHARES})<0,INDEX(${NAMES},MATCH(MIN(${MONEY_OR_SHARES}),${MONEY_OR_SHARES},0))&": write 0 or more.",IF(MAX(${SHARES},${DEARER})>=1,"Rejects, margin, fee and dearer wax are shares: write 4% or 0.04 for 4 of 100.",""))))`;
