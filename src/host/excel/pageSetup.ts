import { pagesOf } from "../../sheet/pageBreaks";
import { MARGINS } from "../../sheet/paper";
import type { Sheet } from "../../sheet/sheet";
import { rowHeights } from "./rowHeights";

/** A sheet that stands, under the name it got. */
interface Standing {
  readonly worksheet: Excel.Worksheet;
  readonly sheet: Sheet;
  readonly name: string;
}

/**
 * Sets up how sheets are printed, in a sync of its own: Excel may refuse that, for one where there is no printer, and
 * the sheets stand all the same.
 * @param say is told what was refused, and undefined when nothing was
 */
export async function setUpPages(
  context: Excel.RequestContext,
  sheets: readonly Standing[],
  say: (refused: string | undefined) => void,
): Promise<void> {
  const printed = sheets.filter(({ sheet }) => sheet.print);
  if (printed.length === 0) return;
  try {
    for (const { worksheet, sheet } of printed) if (sheet.print) queuePage(worksheet, sheet, sheet.print);
    await context.sync();
    say(undefined);
  } catch {
    const names = printed.map(({ name }) => name).join(" and ");
    say(
      `Excel did not set up how ${names} is printed, as it does where it finds no printer. Before you print, choose the paper and fit the width to one page (Page Layout tab).`,
    );
  }
}

/** Queues how a sheet is printed. */
function queuePage(
  worksheet: Excel.Worksheet,
  sheet: Sheet,
  { paper, landscape, repeatRows, wholeBlocks, newPages = [] }: NonNullable<Sheet["print"]>,
): void {
  const page = worksheet.pageLayout;
  page.paperSize = paper === "a4" ? "A4" : "Letter";
  page.orientation = landscape ? "Landscape" : "Portrait";
  page.headersFooters.defaultForAllPages.leftFooter = "&A";
  page.headersFooters.defaultForAllPages.rightFooter = "Page &P of &N";
  if (repeatRows) page.setPrintTitleRows(`$${repeatRows[0] + 1}:$${repeatRows[1] + 1}`);
  // No program knows how wide another one prints its columns: the width is fitted, and breaks are kept beside that.
  page.zoom = { horizontalFitToPages: 1 };
  if (wholeBlocks) {
    const millimetre = 72 / 25.4;
    page.leftMargin = page.rightMargin = MARGINS.side * millimetre;
    page.topMargin = MARGINS.top * millimetre;
    page.bottomMargin = MARGINS.bottom * millimetre;
    page.footerMargin = (MARGINS.bottom / 2) * millimetre;
  }
  const breaks = wholeBlocks ? pagesOf(sheet, rowHeights(sheet), EXCEL_ROW).breaks : newPages;
  for (const row of breaks) worksheet.horizontalPageBreaks.add(`A${row + 1}`);
}

/** Points of a row whose height is not said. */
const EXCEL_ROW = 15;
