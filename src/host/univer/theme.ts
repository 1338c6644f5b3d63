/** Univer's colours, but for those of references in a formula that is typed: these are to be read, light and dark. */

import { defaultTheme } from "@univerjs/themes";

/** In the dark Univer inverts them: both ways each differs from its ground by at least 4.5 to 1. */
const REFERENCES = {
  1: "purple.800",
  2: "green.700",
  3: "blue.700",
  4: "yellow.700",
  5: "pink.700",
  6: "jiqing.700",
  7: "orange.700",
  8: "gray.600",
  9: "indigo.800",
  10: "red.700",
  11: "green.800",
  12: "yellow.800",
};

export const THEME = { ...defaultTheme, "loop-color": REFERENCES };
