/** Univer itself, with the plugins that are there from the start, in an element of the page. */

import { LocaleType, mergeLocales, Univer } from "@univerjs/core";
import { CalculationMode, UniverSheetsCorePreset } from "@univerjs/preset-sheets-core";
import coreTexts from "@univerjs/preset-sheets-core/locales/en-US";
import { UniverSheetsTablePlugin, UniverSheetsTableUIPlugin } from "@univerjs/preset-sheets-table";
import tableTexts from "@univerjs/preset-sheets-table/locales/en-US";
import type { SheetFunction } from "../../engine/bundle";
import { descriptions, executors } from "../../engine/functions";
import { STYLES } from "../../sheet/styles";
import { STEPS, WHOLE_SHEETS } from "./editing/edits";
import { refusalTexts } from "./refusalTexts";
import { THEME } from "./theme";
import { lookStyle } from "./workbook";

/** What Univer calls its progress by names only: it comes without these texts. */
const PROGRESS = Object.fromEntries(
  ["calculating", "array-analysis", "array-calculation", "done"].map((stage) => [stage, "Working out the formulas"]),
);

/** How tables look; Univer's own looks would colour their cells over. */
const TABLE_LOOK = {
  name: "pourwright",
  style: {
    // The filter's buttons take the text's colour.
    headerRowStyle: lookStyle({ ...STYLES.heading, color: "3A342B" }),
    lastRowStyle: lookStyle({ border: "bottom" }),
  },
};

export function makeUniver(container: HTMLElement, functions: readonly SheetFunction[], dark: boolean): Univer {
  const texts = refusalTexts(mergeLocales(coreTexts, tableTexts, { "sheets-formula": { progress: PROGRESS } }));
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: texts },
    darkMode: dark,
    theme: THEME,
    override: STEPS,
  });
  // On a narrow page the sheets' tabs need the room that zoom and statistics would take.
  const wide = container.clientWidth >= 600;
  const { plugins } = UniverSheetsCorePreset({
    container,
    ribbonType: "simple",
    footer: { menus: wide, zoomSlider: wide, statisticBar: wide },
    formula: {
      function: executors(functions),
      description: descriptions(functions),
      // What formulas spilled is not kept in a workbook that was left.
      initialFormulaComputing: CalculationMode.FORCED,
    },
  });
  for (const plugin of plugins) {
    if (Array.isArray(plugin)) univer.registerPlugin(plugin[0], { ...plugin[1], ...WHOLE_SHEETS });
    else univer.registerPlugin(plugin);
  }
  univer.registerPlugin(UniverSheetsTablePlugin, { userThemes: [TABLE_LOOK] });
  // Its label would cover the row above a table.
  univer.registerPlugin(UniverSheetsTableUIPlugin, { hideAnchor: true });
  return univer;
}
