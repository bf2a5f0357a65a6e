import type { Frame } from '../../../src/pdf/found';
import { isPdf } from '../../../src/pdf/isPdf';
import type { PdfTable } from '../../../src/pdf/pdfTable';
import { refuse, type Result } from '../../../src/result';
import type { Table } from '../../../src/schedule/opening';
import type { Pictures } from '../pdf/pictures';
import { fail, work, type Bench } from './bench';
import { takeTable } from './chooseList';

/** The PDF that is open: its pictures are drawn from it as long as its tables are looked at. */
let pictures: Promise<Pictures> | null = null;

/** Reads a PDF and shows its tables on their pages; the first is marked, the user says which one is read. */
export async function takePdf(bench: Bench, name: string, bytes: Uint8Array, signal: AbortSignal): Promise<void> {
  const read = await readPages(bench, name, bytes, 'schedule', signal);
  if (!read.ok) return fail(bench, `${name}: ${read.message}`);
  const { tables, unread } = read.value;
  closePdf();
  const { openPictures } = await import('../pdf/pictures');
  pictures = openPictures(bytes);
  bench.store.send({ type: 'pdf read', pdf: { name, tables, unread, chosen: 0 } });
}

async function readPages(
  bench: Bench,
  name: string,
  bytes: Uint8Array,
  kind: 'schedule' | 'quote',
  signal: AbortSignal,
) {
  const { readInPage } = await import('../pdf/readInPage');
  const onPage = (page: number, of: number) =>
    bench.store.send({
      type: 'working',
      work: { what: `Reading page ${page} of ${of}`, done: page - 1, of, canStop: true },
    });
  return readInPage(name, bytes, kind, onPage, signal);
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

/** Reads a table again within the frame and the columns that the user has set. */
export function setFrame(bench: Bench, part: number, frame: Frame): Promise<void> {
  return work(bench, 'Reading the frame', async () => {
    const { pdf } = bench.store.get();
    const before = pdf?.tables[pdf.chosen];
    if (!pdf || !before || pictures === null) return;
    const found = await (await pictures).read(frame);
    if (found === null) return fail(bench, 'No rows stand in this frame: make it larger.');
    const parts = before.parts.map((each, index) => (index === part ? { ...found, beside: each.beside } : each));
    const [{ pdfTable }, { SCHEDULE }] = await Promise.all([
      import('../../../src/pdf/pdfTable'),
      import('../../../src/pdf/kinds'),
    ]);
    const table = pdfTable(pdf.name, parts, SCHEDULE.isHeading);
    bench.store.send({
      type: 'pdf read',
      pdf: { ...pdf, tables: pdf.tables.map((each, index) => (index === pdf.chosen ? table : each)) },
    });
  });
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
