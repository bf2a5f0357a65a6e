import { columnLetters } from '../../src/workbook/address';
import type { Sheet } from '../../src/workbook/sheet';

/** Points in an inch. */
const INCH = 72;
const MARGINS = { left: 0.4, right: 0.4, top: 0.6, bottom: 0.6, header: 0.3, footer: 0.3 };

/** The same as a stored workbook has (`sheetXml`): paper, margins, footer, repeated rows and columns, breaks, area. */
export function printSetUp(target: Excel.Worksheet, sheet: Sheet): void {
  const { repeatRows, pagesWide = 1, frozenColumns, pageBreaks = [], printArea } = sheet;
  const { pageLayout } = target;
  pageLayout.paperSize = 'Letter';
  pageLayout.orientation = sheet.landscape ? 'Landscape' : 'Portrait';
  pageLayout.zoom = { horizontalFitToPages: pagesWide };
  pageLayout.leftMargin = MARGINS.left * INCH;
  pageLayout.rightMargin = MARGINS.right * INCH;
  pageLayout.topMargin = MARGINS.top * INCH;
  pageLayout.bottomMargin = MARGINS.bottom * INCH;
  pageLayout.headerMargin = MARGINS.header * INCH;
  pageLayout.footerMargin = MARGINS.footer * INCH;
  const footer = pageLayout.headersFooters.defaultForAllPages;
  footer.leftFooter = '&A';
  footer.rightFooter = 'Page &P of &N';
  if (repeatRows) pageLayout.setPrintTitleRows(`$${repeatRows[0]}:$${repeatRows[1]}`);
  if (pagesWide > 1 && frozenColumns > 0) {
    pageLayout.setPrintTitleColumns(`$A:$${columnLetters(frozenColumns - 1)}`);
  }
  if (printArea !== undefined) pageLayout.setPrintArea(printArea);
  target.horizontalPageBreaks.removePageBreaks(); // those of an earlier filling
  for (const row of pageBreaks) target.horizontalPageBreaks.add(`A${row + 1}`);
}
