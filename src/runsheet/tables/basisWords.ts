/** A basis as it is typed in a column of bases, where `total` means one thing alone. `wax` may be a kind of wax. */
export const basisWords = (text: string): string => (/^(the )?total$/i.test(text) ? "of total" : text);
