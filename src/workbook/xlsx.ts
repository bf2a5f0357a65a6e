import { ok, refuse, type Result } from '../result';
import type { SheetSource } from './sheet';
import { Archive } from './xlsx/archive';
import { commentBoxes, commentsXml, type Comment } from './xlsx/comments';
import { Looks } from './xlsx/looks';
import { contentTypes, packageRelations, sheetRelations, workbookRelations, workbookXml } from './xlsx/package';
import { sheetXml } from './xlsx/sheetXml';

/**
 * The workbook as the bytes of an .xlsx file: formulas with their values cached, formats, names, print set-up. Written and
 * compressed row by row, so that a job of 10,000 openings (most of a million cells) needs no more memory than its file.
 */
export function writeXlsx(sheets: readonly SheetSource[]): Result<Uint8Array> {
  try {
    const archive = new Archive();
    const looks = new Looks();
    const commented: number[] = [];
    for (const [at, sheet] of sheets.entries()) {
      const comments: Comment[] = [];
      archive.add(`xl/worksheets/sheet${at + 1}.xml`, sheetXml(sheet, at === 0, looks, comments));
      if (comments.length === 0) continue;
      commented.push(at + 1);
      archive.add(`xl/worksheets/_rels/sheet${at + 1}.xml.rels`, [sheetRelations(at + 1)]);
      archive.add(`xl/comments${at + 1}.xml`, commentsXml(comments));
      archive.add(`xl/drawings/vmlDrawing${at + 1}.vml`, commentBoxes(comments));
    }
    archive.add('[Content_Types].xml', [contentTypes(sheets.length, commented)]);
    archive.add('_rels/.rels', [packageRelations()]);
    archive.add('xl/workbook.xml', [workbookXml(sheets)]);
    archive.add('xl/_rels/workbook.xml.rels', [workbookRelations(sheets.length)]);
    archive.add('xl/styles.xml', [looks.xml()]);
    return ok(archive.bytes());
  } catch (cause) {
    return refuse(`The workbook could not be written: ${cause instanceof Error ? cause.message : String(cause)}`);
  }
}
