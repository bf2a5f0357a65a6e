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

/** A text of the workbook, and whether any of its characters are struck through. */
export interface SharedText {
  readonly text: string;
  readonly struck: boolean;
}

export function readSharedTexts(xml: string): Result<SharedText[]> {
  const texts: SharedText[] = [];
  const collector = textCollector();
  const refusal = walkXml(xml, 'shared texts', {
    open(name, attributes) {
      if (name === 'si') collector.start();
      collector.open(name, attributes);
    },
    close(name) {
      collector.close(name);
      if (name === 'si') texts.push({ text: unescapeText(collector.text()), struck: collector.struck() });
    },
    text: collector.add,
  });
  return refusal ?? ok(texts);
}

/** Puts the runs of a rich text together, leaves phonetic guides out and tells whether a run is struck through. */
export function textCollector() {
  let parts = '';
  let inText = false;
  let inPhonetic = false;
  let strikes = false;
  let struck = false;
  return {
    start(): void {
      parts = '';
      inText = inPhonetic = strikes = struck = false;
    },
    open(name: string, attributes?: Attributes): void {
      if (name === 'rPh') inPhonetic = true;
      if (name === 't') inText = true;
      if (name === 'r') strikes = false;
      if (name === 'strike' && attributes) strikes = isOn(attributes());
    },
    close(name: string): void {
      if (name === 'rPh') inPhonetic = false;
      if (name === 't') inText = false;
    },
    add(text: string): void {
      if (!inText || inPhonetic) return;
      parts += text;
      struck ||= strikes && /\S/.test(text);
    },
    text: (): string => parts,
    struck: (): boolean => struck,
  };
}

type Attributes = () => Readonly<Record<string, string>>;

/** An element such as `<strike/>` is on unless it says otherwise. */
function isOn({ val }: Readonly<Record<string, string>>): boolean {
  return val === undefined || isTrue(val);
}

/** What a cell's style makes of a number, and whether it strikes the cell through. */
export interface CellLook {
  readonly number: NumberLook;
  readonly struck: boolean;
}

/** For each cell style, how it shows a cell. */
export function readCellLooks(xml: string): Result<CellLook[]> {
  const custom = new Map<number, NumberLook>();
  const styles: { format: number; font: number }[] = [];
  const struckFonts = new Set<number>();
  let fonts = 0;
  let inFonts = false;
  let inCellStyles = false;
  const refusal = walkXml(xml, 'styles', {
    open(name, attributes) {
      if (name === 'fonts') inFonts = true;
      if (name === 'font' && inFonts) fonts += 1;
      if (name === 'strike' && inFonts && isOn(attributes())) struckFonts.add(fonts - 1);
      if (name === 'cellXfs') inCellStyles = true;
      if (name === 'numFmt') {
        const { numFmtId, formatCode = '' } = attributes();
        custom.set(Number(numFmtId), lookOf(formatCode));
      }
      if (name === 'xf' && inCellStyles) {
        const { numFmtId = 0, fontId = 0 } = attributes();
        styles.push({ format: Number(numFmtId), font: Number(fontId) });
      }
    },
    close(name) {
      if (name === 'fonts') inFonts = false;
      if (name === 'cellXfs') inCellStyles = false;
    },
  });
  const look = ({ format, font }: { format: number; font: number }): CellLook => ({
    number: custom.get(format) ?? (isBuiltInDate(format) ? 'date' : null),
    struck: struckFonts.has(font),
  });
  return refusal ?? ok(styles.map(look));
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
  // A NUL would vanish on the way to the eye, and 3 and 6 on either side of it read as 36.
  return text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) => String.fromCharCode(parseInt(code, 16) || 0xfffd));
}

export function isTrue(value: string | undefined): boolean {
  return value === '1' || value === 'true';
}
