/** A column of a table as formulas name it: an apostrophe before each sign that would end it. */
export const columnRef = (table: string, heading: string): string => `${table}[${heading.replace(/['[\]#@]/g, "'$&")}]`;
