import type { Frame } from '../../../src/pdf/found';
import { isPdf } from '../../../src/pdf/isPdf';
import type { PdfTable } from '../../../src/pdf/pdfTable';
import { refuse, type Result } from '../../../src/result';
import type { Table } from '../../../src/schedule/opening';
import type { Frames } from '../pdf/inPdfWorker';
import type { Pictures } from '../pdf/pictures';
import { fail, work, type Bench } from './bench';
import { takeTable } from './chooseList';

/** The PDF that is open: its pictures are drawn, and frames read again, as long as its tables are looked at. */
let pictures: Promise<Pictures> | null = null;
let frames: Frames | null = null;

/** Reads a PDF and shows its tables on their pages; the first is marked, the user says which one is read. */
export async function takePdf(bench: Bench, name: string, bytes: Uint8Array, signal: AbortSignal): Promise<void> {
  const read = await readPages(bench, name, bytes, 'schedule', signal);
  if (!read.ok) return fail(bench, `${name}: ${read.message}`);
  const { tables, unread } = read.value;
  closePdf();
  const [{ openPictures }, { framesOf }] = await Promise.all([import('../pdf/pictures'), import('../pdf/inPdfWorker')]);
  pictures = openPictures(bytes);
  frames = framesOf(bytes);
  bench.store.send({ type: 'pdf read', pdf: { name, tables, unread, chosen: 0 } });
}

async function readPages(
  bench: Bench,
  name: string,
  bytes: Uint8Array,
  kind: 'schedule' | 'quote',
  signal: AbortSignal,
) {
  const { readInWorker } = await import('../pdf/inPdfWorker');
  const onPage = (page: number, of: number) =>
    bench.store.send({
      type: 'working',
      work: { what: `Reading page ${page} of ${of}`, done: page - 1, of, canStop: true },
    });
  return readInWorker(name, bytes, kind, onPage, signal);
}

/** The quote or revised schedule in a PDF: its only table that reads like one. */
export async function readOnlyTable(
  bench: Bench,
  name: string,
  bytes: Uint8Array,
  kind: 'schedule' | 'quote',
  signal: AbortSignal,
): Promise<Result<Table>> {
  const read = await readPages(bench, name, bytes, kind, signal);
  if (!read.ok) return refuse(`${name}: ${read.message}`);
  if (read.value.tables.length > 1)
    return refuse(
      `${name} holds ${read.value.tables.length} tables that read like a ${kind}; please give a PDF of the page with the right one.`,
    );
  const { chooseOffered } = await import('../../../src/pdf/offer');
  return chooseOffered(name, read.value, {});
}

/** The page of a table as a picture; null where no PDF is open any more. */
export async function drawPage(page: number, turn: number, scale: number): Promise<HTMLCanvasElement | null> {
  return pictures === null ? null : (await pictures).draw(page, turn, scale);
}

/** The frame that was moved last and is not read yet. */
let moved: { readonly part: number; readonly frame: Frame } | null = null;

/** Reads a table again within the frame and the columns that the user has set. One moved meanwhile is read right after. */
export async function setFrame(bench: Bench, part: number, frame: Frame): Promise<void> {
  moved = { part, frame };
  await work(bench, 'Reading the frame', async () => {
    while (moved !== null) {
      const wanted = moved;
      moved = null;
      await readMoved(bench, wanted.part, wanted.frame);
    }
  });
}

async function readMoved(bench: Bench, part: number, frame: Frame): Promise<void> {
  const { pdf } = bench.store.get();
  const before = pdf?.tables[pdf.chosen];
  if (!pdf || !before || frames === null) return;
  const read = await frames.read({ name: pdf.name, parts: before.parts, part, frame });
  // Where nothing can be read, the frame goes back to what the cells beside it were read from.
  const back = (): PdfTable => ({ ...before, parts: before.parts.map((each) => ({ ...each })) });
  const table = read.ok ? read.value : back();
  bench.store.send({
    type: 'pdf read',
    pdf: { ...pdf, tables: pdf.tables.map((each, index) => (index === pdf.chosen ? table : each)) },
  });
  if (!read.ok) fail(bench, read.message);
}

/** Takes the marked table on to the next step, like any other list. */
export function takePdfTable(bench: Bench, { table }: PdfTable): Promise<void> {
  return work(bench, `Reading ${table.name}`, async () => {
    const { pdf } = bench.store.get();
    const unread = pdf?.unread.map(({ page, why }) => ({ what: `page ${page}`, why })) ?? [];
    await takeTable(bench, { ...table, unread });
  });
}

function closePdf(): void {
  void pictures?.then((open) => open.close()).catch(() => undefined);
  pictures = null;
  frames?.close();
  frames = null;
  moved = null;
}

export function leavePdf(bench: Bench): void {
  closePdf();
  bench.store.send({ type: 'pdf read', pdf: null });
}

/** The bytes of a file that says that it is a PDF; null for any other. */
export async function pdfBytes(file: File): Promise<Uint8Array | null> {
  const head = new Uint8Array(await file.slice(0, 1024).arrayBuffer());
  return isPdf(head) ? new Uint8Array(await file.arrayBuffer()) : null;
}
