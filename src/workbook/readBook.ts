import { ok, refuse, type Result } from '../result';
import { openWorkbook, optional, type WorkbookPackage } from '../schedule/xlsxPackage';
import { partPath, readSharedTexts, readWorkbook, textCollector, unescapeText } from '../schedule/xlsxParts';
import { walkXml } from '../schedule/xml';
import { readRange, splitReference } from './address';
import type { Book, BookSheet, Sheet } from './sheet';
import { SETTINGS_SPACE } from './xlsx/settings';
import { readLooks } from './xlsx/readLooks';
import { readSheetXml, type ReadSheet } from './xlsx/readSheetXml';

/** A workbook read from a file, and whether it is one of ours: its formulas then go on calculating. */
export interface ReadBook extends Book {
  readonly ours: boolean;
}

/** Names that every takeoff workbook has: by them one is known that another program has saved. */
const OUR_NAME = 'Shop_unit';

/**
 * A whole workbook from the bytes of an .xlsx file: cells with formulas and looks, names, widths, hidden and frozen parts,
 * checks, print set-up, and the small texts that the pane keeps with it. Not read: charts, pictures, theme colors,
 * conditional formats. Refused in a sentence: what is no whole .xlsx file.
 */
export function readBook(bytes: Uint8Array): Result<ReadBook> {
  try {
    return read(bytes);
  } catch (error) {
    return refuse(`The workbook can't be read: ${error instanceof Error ? error.message : 'it is damaged'}.`);
  }
}

function read(bytes: Uint8Array): Result<ReadBook> {
  const opened = openWorkbook(bytes);
  if (!opened.ok) return opened;
  const file = opened.value;
  const listed = readWorkbook(file.xml);
  if (!listed.ok) return listed;
  const names = readNames(file.xml);
  if (!names.ok) return names;
  const texts = optional(file.part(file.pathOf('sharedStrings') ?? ''), readSharedTexts);
  if (!texts.ok) return texts;
  const looks = optional(file.part(file.pathOf('styles') ?? ''), readLooks);
  if (!looks.ok) return looks;
  const settings = readSettings(file);
  if (!settings.ok) return settings;
  const sheets: ReadSheet[] = [];
  const plainTexts = texts.value.map(({ text }) => text);
  for (const [at, { name, relation, hidden }] of listed.value.sheets.entries()) {
    const link = file.relations.get(relation);
    if (!link || link.kind !== 'worksheet' || link.external) continue;
    const path = partPath(file.folder, link.target);
    const xml = file.part(path);
    if (!xml.ok) return xml;
    if (xml.value === null) return refuse(`The sheet "${name}" is missing from the file.`);
    const comments = readComments(file, path);
    if (!comments.ok) return comments;
    const sheet = readSheetXml(xml.value, name, plainTexts, looks.value, comments.value);
    if (!sheet.ok) return sheet;
    sheets.push({ ...sheet.value, ...printSetUp(names.value, at), ...(hidden ? { hidden } : {}) });
  }
  if (sheets.length === 0) return refuse('The workbook has no sheet with cells.');
  const ours = settings.value !== null || names.value.some(({ name }) => name === OUR_NAME);
  return ok({ sheets: withNames(sheets, names.value), settings: settings.value ?? {}, ours });
}

interface DefinedName {
  readonly name: string;
  readonly ref: string;
  /** Place of the sheet it belongs to alone; null for a name of the workbook. */
  readonly sheet: number | null;
}

function readNames(xml: string): Result<DefinedName[]> {
  const names: { name: string; ref: string; sheet: number | null }[] = [];
  let open = false;
  const refusal = walkXml(xml, 'workbook', {
    open(name, attributes) {
      open = name === 'definedName';
      if (!open) return;
      const { name: title = '', localSheetId } = attributes();
      names.push({
        name: unescapeText(title),
        ref: '',
        sheet: localSheetId === undefined ? null : Number(localSheetId),
      });
    },
    close() {
      open = false;
    },
    text(text) {
      if (open) names.at(-1)!.ref += text;
    },
  });
  return refusal ?? ok(names.map((one) => ({ ...one, ref: unescapeText(one.ref) })));
}

/** Each name with the sheet that it points at. */
function withNames(sheets: readonly ReadSheet[], names: readonly DefinedName[]): Book['sheets'] {
  const held = new Map<number, { name: string; ref: string }[]>();
  for (const { name, ref, sheet } of names) {
    if (sheet !== null || name.startsWith('_xlnm.')) continue;
    const place = sheets.findIndex((one) => one.name === splitReference(ref).sheet);
    const at = Math.max(0, place);
    held.set(at, [...(held.get(at) ?? []), { name, ref }]);
  }
  return sheets.map((sheet, at) => (held.has(at) ? { ...sheet, names: held.get(at)! } : sheet));
}

/** Rows repeated on every page and the range printed: names of the sheet's own in the file. */
function printSetUp(names: readonly DefinedName[], sheet: number): Pick<BookSheet, 'repeatRows' | 'printArea'> {
  const own = (name: string) => names.find((one) => one.sheet === sheet && one.name === name)?.ref;
  const rows = /\$(\d+):\$(\d+)(?:,|$)/.exec(own('_xlnm.Print_Titles') ?? '');
  const area = splitReference(own('_xlnm.Print_Area') ?? '').cells.replaceAll('$', '');
  return {
    ...(rows ? { repeatRows: [Number(rows[1]), Number(rows[2])] as const } : {}),
    ...(area !== '' && readRange(area).ok ? { printArea: area } : {}),
  };
}

/** The pane's notes; null where the file has none of ours. */
function readSettings(file: WorkbookPackage): Result<Book['settings'] | null> {
  for (const { kind, target } of file.relations.values()) {
    if (kind !== 'customXml') continue;
    const xml = file.part(partPath(file.folder, target));
    if (!xml.ok) return xml;
    if (xml.value === null || !xml.value.includes(SETTINGS_SPACE)) continue;
    const settings: Record<string, string> = {};
    let key: string | null = null;
    const refusal = walkXml(xml.value, 'settings', {
      open(name, attributes) {
        if (name !== 'setting') return;
        key = unescapeText(attributes()['key'] ?? '');
        settings[key] = '';
      },
      close() {
        key = null;
      },
      text(text) {
        if (key !== null) settings[key] += text;
      },
    });
    if (refusal) return refusal;
    return ok(Object.fromEntries(Object.entries(settings).map(([name, value]) => [name, unescapeText(value)])));
  }
  return ok(null);
}

function readComments(file: WorkbookPackage, sheetPath: string): Result<ReadonlyMap<string, string>> {
  const found = new Map<string, string>();
  const relations = file.relationsOf(sheetPath);
  if (!relations.ok) return relations;
  const link = [...relations.value.values()].find(({ kind, external }) => kind === 'comments' && !external);
  if (!link) return ok(found);
  const xml = file.part(partPath(sheetPath.slice(0, sheetPath.lastIndexOf('/')), link.target));
  if (!xml.ok) return xml;
  if (xml.value === null) return ok(found);
  const collector = textCollector();
  let address = '';
  const refusal = walkXml(xml.value, 'comments', {
    open(name, attributes) {
      if (name === 'comment') {
        address = attributes()['ref'] ?? '';
        collector.start();
      }
      collector.open(name);
    },
    close(name) {
      collector.close(name);
      if (name === 'comment') found.set(address, unescapeText(collector.text()));
    },
    text: collector.add,
  });
  return refusal ?? ok(found);
}

/** A workbook of somebody else's: its sheets as values, since formulas of any kind would be trusted with the job. */
export function asValues(book: ReadBook): Book {
  const valueOf = (cell: Sheet['rows'][number][number]) => {
    if (!cell) return null;
    const { formula: _formula, spill: _spill, style: _style, ...rest } = cell;
    return rest;
  };
  return {
    settings: {},
    sheets: book.sheets.map(
      ({ names: _names, validations: _validations, figures: _figures, locked: _locked, ...sheet }) => ({
        ...sheet,
        rows: sheet.rows.map((row) => row.map(valueOf)),
      }),
    ),
  };
}
