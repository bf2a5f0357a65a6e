import { ok, refuse, type Result } from '../result';
import type { Book, BookSheet } from './sheet';
import { Archive } from './xlsx/archive';
import { metadataXml } from './xlsx/arrays';
import { commentBoxes, commentsXml } from './xlsx/comments';
import { drawingsXml } from './xlsx/drawings';
import { storedName } from './formulas/calls';
import { Looks } from './xlsx/looks';
import {
  contentTypes,
  packageRelations,
  settingsRelations,
  sheetRelations,
  taskPaneRelations,
  workbookRelations,
  workbookXml,
} from './xlsx/package';
import { SETTINGS_PART, SETTINGS_PROPERTIES, settingsPropertiesXml, settingsXml } from './xlsx/settings';
import { sheetXml, type Found } from './xlsx/sheetXml';
import { taskPanesXml, webExtensionXml } from './xlsx/webExtension';

/**
 * The workbook as the bytes of an .xlsx file: formulas with their values cached, formats, names, print set-up. Written and
 * compressed row by row, so that a job of 10,000 openings (most of a million cells) needs no more memory than its file.
 * `settings`: the small texts kept with the workbook.
 */
export function writeXlsx(sheets: readonly BookSheet[], settings?: Book['settings']): Result<Uint8Array> {
  try {
    const archive = new Archive();
    const looks = new Looks();
    const commented: number[] = [];
    const pictured: number[] = [];
    const functions = new Set<string>();
    let arrays = false;
    for (const [at, sheet] of sheets.entries()) {
      const found: Found = { comments: [], functions, arrays };
      archive.add(`xl/worksheets/sheet${at + 1}.xml`, sheetXml(sheet, at === 0, looks, found));
      arrays = found.arrays;
      const { comments } = found;
      const { pictures = [] } = sheet;
      const has = { comments: comments.length > 0, pictures: pictures.length > 0 };
      if (!has.comments && !has.pictures) continue;
      archive.add(`xl/worksheets/_rels/sheet${at + 1}.xml.rels`, [sheetRelations(at + 1, has)]);
      if (has.pictures) {
        pictured.push(at + 1);
        archive.add(`xl/drawings/drawing${at + 1}.xml`, drawingsXml(pictures, sheet.widths));
      }
      if (!has.comments) continue;
      commented.push(at + 1);
      archive.add(`xl/comments${at + 1}.xml`, commentsXml(comments));
      archive.add(`xl/drawings/vmlDrawing${at + 1}.vml`, commentBoxes(comments));
    }
    const parts = {
      sheets: sheets.length,
      commented,
      pictured,
      arrays,
      addIn: functions.size > 0,
      settings: settings !== undefined,
    };
    archive.add('[Content_Types].xml', [contentTypes(parts)]);
    archive.add('_rels/.rels', [packageRelations(parts)]);
    archive.add('xl/workbook.xml', [workbookXml(sheets)]);
    archive.add('xl/_rels/workbook.xml.rels', [workbookRelations(parts)]);
    archive.add('xl/styles.xml', [looks.xml()]);
    if (parts.arrays) archive.add('xl/metadata.xml', [metadataXml()]);
    if (parts.addIn) {
      archive.add('xl/webextensions/webextension1.xml', [webExtensionXml([...functions].sort().map(storedName))]);
      archive.add('xl/webextensions/taskpanes.xml', [taskPanesXml()]);
      archive.add('xl/webextensions/_rels/taskpanes.xml.rels', [taskPaneRelations()]);
    }
    if (settings) {
      archive.add(SETTINGS_PART, [settingsXml(settings)]);
      archive.add('customXml/_rels/item1.xml.rels', [settingsRelations()]);
      archive.add(SETTINGS_PROPERTIES, [settingsPropertiesXml()]);
    }
    return ok(archive.bytes());
  } catch (cause) {
    return refuse(`The workbook could not be written: ${cause instanceof Error ? cause.message : String(cause)}`);
  }
}
