import { columnLetters } from '../../src/workbook/address';
import type { Sheet } from '../../src/workbook/sheet';

/** In points: 0.4, 0.6 and 0.3 inches. */
const MARGINS = { side: 28.8, end: 43.2, header: 21.6 };

/** The same as a stored workbook has (`sheetXml`): paper, margins, footer, repeated rows and columns, breaks, area. */
export function printSetUp(target: Excel.Worksheet, sheet: Sheet): void {
  const { repeatRows, pagesWide = 1, frozenColumns, pageBreaks = [], printArea } = sheet;
  const { pageLayout } = target;
  pageLayout.paperSize = sheet.paper === 'A4' ? 'A4' : 'Letter';
  pageLayout.orientation = sheet.landscape ? 'Landscape' : 'Portrait';
  pageLayout.zoom = { horizontalFitToPages: pagesWide };
  pageLayout.leftMargin = MARGINS.side;
  pageLayout.rightMargin = MARGINS.side;
  pageLayout.topMargin = MARGINS.end;
  pageLayout.bottomMargin = MARGINS.end;
  pageLayout.headerMargin = MARGINS.header;
  pageLayout.footerMargin = MARGINS.header;
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
