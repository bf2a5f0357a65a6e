import { useEffect, useRef, useState } from 'preact/hooks';
import type { PdfTable } from '../../../src/pdf/pdfTable';
import { drawPage, leavePdf, setFrame, takePdfTable } from '../deeds/choosePdf';
import type { Bench } from '../deeds/bench';
import { count } from '../format';
import { FramedPicture } from '../parts/framedPicture';
import type { ShownPdf } from '../state';

/** The tables of a PDF on their pages: one is marked, its frame and columns can be moved, its cells stand beside it as read. */
export function PdfStep({ bench, pdf }: { readonly bench: Bench; readonly pdf: ShownPdf }) {
  const table = pdf.tables[pdf.chosen]!;
  const doubts = table.table.doubts ?? new Map<number, readonly string[]>();
  return (
    <>
      <h1>{pdf.tables.length === 1 ? 'Is this the schedule?' : 'Which one is the schedule?'}</h1>
      <p>
        {pdf.name} holds {count(pdf.tables.length, 'table')} that {pdf.tables.length === 1 ? 'reads' : 'read'} like a
        schedule. It stays on this computer.
      </p>
      {pdf.tables.length > 1 && (
        <fieldset class="pdf-tables">
          <legend>Tables</legend>
          {pdf.tables.map((one, index) => (
            <label key={index}>
              <input
                type="radio"
                name="pdf-table"
                checked={index === pdf.chosen}
                onChange={() => bench.store.send({ type: 'pdf read', pdf: { ...pdf, chosen: index } })}
              />{' '}
              {pagesOf(one)}, {count(one.table.rows.length, 'row')}
            </label>
          ))}
        </fieldset>
      )}
      {table.parts.map((part, index) => (
        <FramedPicture
          key={`${pdf.chosen} ${index}`}
          part={part}
          others={pdf.tables.flatMap((one, at) =>
            one.parts.flatMap(({ page, turn, box }) =>
              one !== table && page === part.page && turn === part.turn
                ? [
                    {
                      box,
                      name: `Table ${at + 1}`,
                      choose: () => bench.store.send({ type: 'pdf read', pdf: { ...pdf, chosen: at } }),
                    },
                  ]
                : [],
            ),
          )}
          onFrame={(frame) => void setFrame(bench, index, frame)}
        />
      ))}
      <h2>As read</h2>
      {doubts.size > 0 && (
        <p>
          {count(doubts.size, 'row')} {doubts.size === 1 ? 'is' : 'are'} in doubt: openings there are not priced until
          they are settled.
        </p>
      )}
      {(table.table.remarks ?? []).map((remark) => (
        <p key={remark}>{remark}</p>
      ))}
      <Cells table={table} doubts={doubts} />
      {pdf.unread.length > 0 && (
        <details class="left-out">
          <summary>{count(pdf.unread.length, 'page')} not read</summary>
          <ul class="facts">
            {pdf.unread.map(({ page, why }) => (
              <li key={page}>
                Page {page}: {why}
              </li>
            ))}
          </ul>
        </details>
      )}
      <div class="next">
        <button type="button" class="main" onClick={() => void takePdfTable(bench, table)}>
          Read this table
        </button>
        <button type="button" class="quiet" onClick={() => leavePdf(bench)}>
          Choose something else
        </button>
      </div>
    </>
  );
}

function pagesOf({ parts }: PdfTable): string {
  const pages = parts.flatMap((part) => [part.page, ...part.beside.map(({ page }) => page)]);
  const [first, last] = [Math.min(...pages), Math.max(...pages)];
  return first === last ? `Page ${first}` : `Pages ${first} to ${last}`;
}

function Cells({
  table,
  doubts,
}: {
  readonly table: PdfTable;
  readonly doubts: ReadonlyMap<number, readonly string[]>;
}) {
  return (
    <div class="pdf-cells" tabIndex={0} role="region" aria-label="Cells as read">
      <table>
        <tbody>
          {table.table.rows.map((row, index) => {
            const reasons = doubts.get(index + 1);
            return [
              <tr key={index} class={reasons ? 'doubted' : ''}>
                <th scope="row">{index + 1}</th>
                {row.map((cell, column) => (
                  <td key={column}>{cell === null ? '' : String(cell)}</td>
                ))}
              </tr>,
              reasons && (
                <tr key={`why ${index}`} class="why">
                  <td colSpan={row.length + 1}>
                    {reasons.join('; ')}
                    <RowCrop table={table} row={index} />
                  </td>
                </tr>
              ),
            ];
          })}
        </tbody>
      </table>
    </div>
  );
}

const CROP_SCALE = 1.5;

/** The row as it stands on the page. */
function RowCrop({ table, row }: { readonly table: PdfTable; readonly row: number }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [shown, setShown] = useState(false);
  const place = table.places[row]!;
  const part = table.parts[place.part]!;
  const { top, bottom } = part.rows[place.row]!;
  useEffect(() => {
    if (!shown) return;
    let over = false;
    void drawPage(part.page, part.turn, CROP_SCALE).then((page) => {
      const own = canvas.current;
      if (over || page === null || own === null) return;
      const [left, width] = [part.box.left * CROP_SCALE, (part.box.right - part.box.left) * CROP_SCALE];
      const height = (bottom - top + 8) * CROP_SCALE;
      own.width = width;
      own.height = height;
      own.getContext('2d')?.drawImage(page, left, (top - 4) * CROP_SCALE, width, height, 0, 0, width, height);
    });
    return () => {
      over = true;
    };
  }, [shown, part, top, bottom]);
  return shown ? (
    <canvas ref={canvas} role="img" aria-label={`Row ${row + 1} on page ${part.page}`} />
  ) : (
    <button type="button" class="quiet" onClick={() => setShown(true)}>
      Show it on the page
    </button>
  );
}
