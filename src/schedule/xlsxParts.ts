import { ok, type Result } from '../result';
import { lookOf, type NumberLook } from './numberLook';
import { walkXml } from './xml';

/** The small parts of a workbook file: sheets and where they are, shared texts, how styles show numbers. */
export interface SheetEntry {
  readonly name: string;
  readonly relation: string;
  readonly hidden: boolean;
}

export function readWorkbook(xml: string): Result<{ sheets: SheetEntry[]; from1904: boolean }> {
  const sheets: SheetEntry[] = [];
  let from1904 = false;
  const refusal = walkXml(xml, 'workbook', {
    open(name, attributes) {
      if (name === 'workbookPr') from1904 ||= isTrue(attributes()['date1904']);
      if (name !== 'sheet') return;
      const { name: title = '', id = '', state = 'visible' } = attributes();
      sheets.push({ name: unescapeText(title), relation: id, hidden: state !== 'visible' });
    },
  });
  return refusal ?? ok({ sheets, from1904 });
}

export interface Relation {
  /** The last word of its type: worksheet, sharedStrings, styles, officeDocument. */
  readonly kind: string;
  readonly target: string;
  readonly external: boolean;
}

export function readRelations(xml: string): Result<Map<string, Relation>> {
  const relations = new Map<string, Relation>();
  const refusal = walkXml(xml, 'relations', {
    open(name, attributes) {
      if (name !== 'Relationship') return;
      const { Id = '', Type = '', Target = '', TargetMode = '' } = attributes();
      relations.set(Id, {
        kind: Type.slice(Type.lastIndexOf('/') + 1),
        target: Target,
        external: TargetMode === 'External',
      });
    },
  });
  return refusal ?? ok(relations);
}

/** A part's path from a relation's target: `/xl/a.xml` as it stands, `a.xml` and `../a.xml` from the folder. */
export function partPath(folder: string, target: string): string {
  const path = target.replace(/\\/g, '/');
  if (path.startsWith('/')) return path.slice(1);
  const parts = folder === '' ? [] : folder.split('/');
  for (const part of path.split('/')) {
    if (part === '..') parts.pop();
    else if (part !== '.' && part !== '') parts.push(part);
  }
  return parts.join('/');
}

export function readSharedTexts(xml: string): Result<string[]> {
  const texts: string[] = [];
  const collector = textCollector();
  const refusal = walkXml(xml, 'shared texts', {
    open(name) {
      if (name === 'si') collector.start();
      collector.open(name);
    },
    close(name) {
      collector.close(name);
      if (name === 'si') texts.push(unescapeText(collector.text()));
    },
    text: collector.add,
  });
  return refusal ?? ok(texts);
}

/** Puts the runs of a rich text together and leaves phonetic guides out. */
export function textCollector() {
  let parts = '';
  let inText = false;
  let inPhonetic = false;
  return {
    start(): void {
      parts = '';
      inText = inPhonetic = false;
    },
    open(name: string): void {
      if (name === 'rPh') inPhonetic = true;
      if (name === 't') inText = true;
    },
    close(name: string): void {
      if (name === 'rPh') inPhonetic = false;
      if (name === 't') inText = false;
    },
    add(text: string): void {
      if (inText && !inPhonetic) parts += text;
    },
    text: (): string => parts,
  };
}

/** For each cell style, what it makes of a number. */
export function readNumberLooks(xml: string): Result<NumberLook[]> {
  const custom = new Map<number, NumberLook>();
  const formats: number[] = [];
  let inCellStyles = false;
  const refusal = walkXml(xml, 'styles', {
    open(name, attributes) {
      if (name === 'cellXfs') inCellStyles = true;
      if (name === 'numFmt') {
        const { numFmtId, formatCode = '' } = attributes();
        custom.set(Number(numFmtId), lookOf(formatCode));
      }
      if (name === 'xf' && inCellStyles) formats.push(Number(attributes()['numFmtId'] ?? 0));
    },
    close(name) {
      if (name === 'cellXfs') inCellStyles = false;
    },
  });
  return refusal ?? ok(formats.map((format) => custom.get(format) ?? (isBuiltInDate(format) ? 'date' : null)));
}

/** Built-in number formats for dates and times: ECMA-376 part 1, 18.8.30, with the East Asian ones. */
function isBuiltInDate(format: number): boolean {
  return (
    (format >= 14 && format <= 22) ||
    (format >= 27 && format <= 36) ||
    (format >= 45 && format <= 47) ||
    (format >= 50 && format <= 58)
  );
}

/** `_x000D_` and the like in texts stand for characters that XML can't hold. */
export function unescapeText(text: string): string {
  if (!text.includes('_x')) return text;
  return text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) => String.fromCharCode(parseInt(code, 16)));
}

export function isTrue(value: string | undefined): boolean {
  return value === '1' || value === 'true';
}
