/** Of the built site only the list of functions is read here, which no mutant changes. */
export const dist = new URL("../../dist/", import.meta.url);
