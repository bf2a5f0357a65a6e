import { ok, refuse, type Result } from '../result';
import type { FoundTable, ListKind } from './found';
import type { Matrix, PageMarks, Seen } from './marks';
import { overPages } from './overPages';
import { pdfTable, type PdfTable } from './pdfTable';
import { readPage } from './readPage';
import { MOST_LETTERS, walk, type Operators } from './walk';
import type { FontFacts } from './walkState';

/** What is used of the PDF library. */
export interface PdfLibrary {
  readonly OPS: Readonly<Record<string, number>>;
  getDocument(options: object): PdfTask;
}
export interface PdfTask {
  readonly promise: Promise<PdfDocument>;
  destroy(): Promise<void>;
}
export interface PdfDocument {
  readonly numPages: number;
  getPage(number: number): Promise<PdfPage>;
  getOptionalContentConfig(): Promise<{ isVisible(properties: unknown): boolean }>;
}
export interface PdfPage {
  readonly commonObjs: { has(id: string): boolean; get(id: string): unknown };
  getViewport(options: { scale: number }): { width: number; height: number; transform: number[] };
  getOperatorList(options: object): Promise<Operators>;
  cleanup(): void;
}

/** How the library reads: no code from the file, no pictures, no fonts but their measures. */
export const READING_OPTIONS = {
  isEvalSupported: false,
  useWasm: false,
  maxImageSize: 1,
  disableFontFace: true,
  useSystemFonts: false,
  verbosity: 0,
} as const;

/** What a PDF holds that reads like a list. */
export interface PdfReading {
  readonly pages: number;
  readonly tables: readonly PdfTable[];
  /** Pages that could not be read, and why. */
  readonly unread: readonly UnreadPage[];
}

export interface UnreadPage {
  readonly page: number;
  readonly why: string;
}

/** Told before each page is read: its number, and how many there are. */
export type OnPage = (page: number, of: number) => void;

/** Reads a PDF's tables, page by page. Refused in a sentence that says what is wrong with the file and what to ask for. */
export async function readPdf(
  library: PdfLibrary,
  file: string,
  bytes: Uint8Array,
  kind: ListKind,
  onPage: OnPage = () => undefined,
  skip: ReadonlySet<number> = new Set(),
): Promise<Result<PdfReading>> {
  const task = library.getDocument({ ...READING_OPTIONS, data: bytes });
  try {
    const document = await task.promise;
    return await readAll(document, library, file, kind, onPage, skip);
  } catch (error) {
    return refuse(whyNot(error));
  } finally {
    await task.destroy().catch(() => undefined);
  }
}

/** Why a page that was stopped is not read. */
export const TOO_SLOW =
  'It takes longer than 8 seconds to read: please ask for the spreadsheet, or for a PDF saved from it.';

export const DAMAGED = 'The PDF is damaged or cut short: please ask for it again.';

/** What the library's error means to the person who has the file. */
function whyNot(error: unknown): string {
  const name = error instanceof Error ? error.name : '';
  if (name === 'PasswordException') return 'The PDF is protected with a password: please ask for a copy without one.';
  return DAMAGED;
}

async function readAll(
  document: PdfDocument,
  library: PdfLibrary,
  file: string,
  kind: ListKind,
  onPage: OnPage,
  skip: ReadonlySet<number>,
): Promise<Result<PdfReading>> {
  const isHeading = remembered(kind.isHeading);
  const found: FoundTable[] = [];
  const unread: UnreadPage[] = [];
  const marksOf = await pagesOf(document, library);
  for (let number = 1; number <= document.numPages; number += 1) {
    if (skip.has(number)) {
      unread.push({ page: number, why: TOO_SLOW });
      continue;
    }
    onPage(number, document.numPages);
    const marks = await marksOf(number);
    const tables = readPage(marks, number, isHeading, found);
    found.push(...tables);
    const why = tables.length > 0 ? null : whyNoLetters(marks);
    if (why !== null) unread.push({ page: number, why });
  }
  const tables = overPages(found)
    .filter(([first]) => first!.named)
    .map((parts) => pdfTable(file, parts, kind))
    .filter(({ table }) => kind.fits(table));
  const pages = document.numPages;
  const [first] = unread;
  if (tables.length === 0 && first && unread.length === pages) return refuse(first.why);
  if (tables.length === 0) {
    const some = first ? ` Page ${first.page}: ${first.why}` : '';
    return refuse(
      `No ${kind.name} was found on ${pages === 1 ? 'its page' : `its ${pages} pages`}: no table there has headings that name three things of ${kind.of}.${some}`,
    );
  }
  return ok({ pages, tables, unread });
}

/** What a plan says over and over is looked at once. */
function remembered(isHeading: ListKind['isHeading']): ListKind['isHeading'] {
  const known = new Map<string, boolean>();
  return (text) => {
    const before = known.get(text);
    if (before !== undefined) return before;
    const is = isHeading(text);
    known.set(text, is);
    return is;
  };
}

/** Fewer letters than this on a page are a stamp, no text. */
const FEW = 20;
/** More curved or slanted pieces than this on a page without text are letters. */
const MANY_CURVES = 100;

/** Why a page gives no text to read; null where it does. */
function whyNoLetters({ letters, seen }: PageMarks): string | null {
  const { skewed, invisible, pictures, curves, unknown, crowded }: Seen = seen;
  if (crowded)
    return `It holds more than ${MOST_LETTERS.toLocaleString('en-US')} letters, far more than a schedule: please ask for the spreadsheet, or for a PDF saved from it.`;
  if (skewed > FEW && skewed > letters.length)
    return 'Its text stands askew on the page: please ask for the spreadsheet, or for a PDF saved from it.';
  if (unknown > FEW && unknown > letters.length / 2)
    return "Its fonts don't say which letters they draw: please ask for the spreadsheet, or for a PDF saved from it.";
  if (letters.length >= FEW) return null;
  if (pictures > 0 || invisible > 0)
    return 'It is a picture of text, as a scanner makes it: please ask for the spreadsheet, or for a PDF saved from it.';
  if (curves > MANY_CURVES)
    return 'Its letters are drawn as lines, not as text: please ask for the spreadsheet, or for a PDF saved from it.';
  // The library leaves large pictures out, so that a scanned page looks like a blank one.
  return 'It holds no text, or hardly any: it is blank or a picture of text, as a scanner makes it. Please ask for the spreadsheet, or for a PDF saved from it.';
}

/** What a page of a document draws, on the layers that are shown. */
export async function pagesOf(
  document: PdfDocument,
  library: PdfLibrary,
): Promise<(page: number) => Promise<PageMarks>> {
  const layers = await document.getOptionalContentConfig();
  const isShown = (properties: unknown) => layers.isVisible(properties);
  return async (page) => pageMarks(await document.getPage(page), library, isShown);
}

async function pageMarks(
  page: PdfPage,
  library: PdfLibrary,
  layer: (properties: unknown) => boolean,
): Promise<PageMarks> {
  const view = page.getViewport({ scale: 1 });
  const operators = await page.getOperatorList({ annotationMode: 0 });
  const marks = walk(operators, {
    width: view.width,
    height: view.height,
    matrix: view.transform as unknown as Matrix,
    names: library.OPS,
    font: (id) => (page.commonObjs.has(id) ? (page.commonObjs.get(id) as FontFacts) : null),
    layer,
  });
  page.cleanup();
  return marks;
}
