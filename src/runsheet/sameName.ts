/** Names are the same whatever their case, the spaces around them, and how many of what sort stand between words. */
export const sameName = (name: string): string =>
  name
    .normalize("NFC")
    .replace(/[\s\u200b\u2060]+/g, " ")
    .trim()
    .toLowerCase();
