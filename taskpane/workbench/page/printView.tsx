import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Cell } from '../../../src/workbook/sheet';
import { PLAN_STATE_COLUMN } from '../../../src/workbook/takeoff/read';
import { cellData, plainValue, type Engine } from '../engine';
import { readWorksheet } from '../readGrid';
import type { HeldSheet } from '../worksheet';
import { Dialog } from './dialogs';

/** What is printed unless the user says otherwise, in this order. */
const USUAL = ['Proposal', 'Takeoff', 'Setups', 'Tickets', 'Stock', 'Check'];
/** What is planned from the Takeoff's rows, and can be older than they are. */
const PLANNED: readonly string[] = ['Setups', 'Tickets', 'Stock', 'Purchase', 'Check'];
/** A character's width on paper, in points, and that of a letter page's print, upright and across. */
const CHARACTER_PT = 5.6;
const PAGE_PT = { upright: 554, across: 734 } as const;

/** The sheets as pages of paper: chosen, looked at, printed. */
export function PrintView({ engine, close }: { readonly engine: Engine; readonly close: () => void }) {
  const names = engine.workbook
    .getSheets()
    .filter((sheet) => sheet.getConfig().hidden !== 1)
    .map((sheet) => sheet.getName());
  const active = engine.workbook.getActiveSheet()?.getName() ?? '';
  const usual = USUAL.includes(active) || !names.some((name) => USUAL.includes(name)) ? [active] : [];
  const [chosen, setChosen] = useState<readonly string[]>(
    usual.length > 0 ? usual : names.filter((name) => USUAL.includes(name)),
  );
  const older = planOlder(engine);
  const [sheets, setSheets] = useState<readonly HeldSheet[] | null>(null);
  useEffect(() => {
    let over = false;
    void (async () => {
      const read: HeldSheet[] = [];
      for (const name of chosen) {
        const worksheet = engine.workbook.getSheetBySheetName(name);
        if (worksheet)
          read.push(await readWorksheet(engine, worksheet, () => new Promise((resume) => setTimeout(resume))));
      }
      if (!over) setSheets(read.filter(({ rows }) => rows.length > 0));
    })();
    return () => {
      over = true;
    };
  }, [chosen]);
  return (
    <Dialog title="Print" wide close={close}>
      <fieldset class="wb-row wb-screen">
        <legend>Sheets</legend>
        {names.map((name) => (
          <label key={name}>
            <input
              type="checkbox"
              checked={chosen.includes(name)}
              onChange={(event) =>
                setChosen(names.filter((one) => (one === name ? event.currentTarget.checked : chosen.includes(one))))
              }
            />
            {name}
          </label>
        ))}
      </fieldset>
      <div class="wb-row wb-screen">
        <button type="button" disabled={!sheets || sheets.length === 0} onClick={() => print()}>
          Print these pages
        </button>
        <button type="button" onClick={close}>
          Close
        </button>
        <span role="status">{sheets?.length === 0 ? 'Nothing is on these sheets.' : ''}</span>
      </div>
      {older !== '' && chosen.some((name) => PLANNED.includes(name)) && (
        <p class="wb-screen wb-older" role="alert">
          {older} Until the pane has done so, {PLANNED.filter((name) => chosen.includes(name)).join(', ')} say so on
          paper.
        </p>
      )}
      <div class="wb-paper" tabIndex={0} role="region" aria-label="Preview">
        {sheets === null ? (
          <p>Laying out the pages…</p>
        ) : (
          sheets.map((sheet) => <Paper key={sheet.name} engine={engine} sheet={sheet} />)
        )}
      </div>
    </Dialog>
  );
}

/** What the Takeoff says of its boards and set-ups: nothing where they are made from its rows as they stand. */
function planOlder(engine: Engine): string {
  const takeoff = engine.workbook.getSheetBySheetName('Takeoff');
  const said = takeoff ? plainValue(engine.library, cellData(engine, takeoff, 0, PLAN_STATE_COLUMN)) : null;
  return typeof said === 'string' ? said : '';
}

/** One sheet: a part for each stretch between two page breaks, its headings repeated on every page. */
function Paper({ engine, sheet }: { readonly engine: Engine; readonly sheet: HeldSheet }) {
  const hidden = new Set(
    (sheet.folded ?? []).flatMap(({ first, last }) => Array.from({ length: last - first + 1 }, (_, at) => first + at)),
  );
  const wide = sheet.rows.reduce((most, row) => Math.max(most, row.length), 0);
  const columns = Array.from({ length: wide }, (_, column) => column).filter((column) => !hidden.has(column));
  const width = columns.reduce((sum, column) => sum + (sheet.widths[column] ?? 10) * CHARACTER_PT, 0);
  const across = sheet.landscape === true;
  const scale = Math.min(1, ((across ? PAGE_PT.across : PAGE_PT.upright) * (sheet.pagesWide ?? 1)) / width);
  const widths = columns.map((column) => (sheet.widths[column] ?? 10) * CHARACTER_PT * scale);
  const away = new Set(sheet.hiddenRows);
  const repeated = sheet.repeatRows ? range(sheet.repeatRows[0] - 1, sheet.repeatRows[1]) : [];
  const starts = [0, ...(sheet.pageBreaks ?? [])].filter((row) => row < sheet.rows.length);
  const line = (row: number) => <Line key={row} engine={engine} cells={sheet.rows[row] ?? []} columns={columns} />;
  const shown = (rows: readonly number[]) => rows.filter((row) => !away.has(row));
  return (
    <>
      {starts.map((start, part) => {
        const rows = shown(range(start, starts[part + 1] ?? sheet.rows.length));
        const above = rows.filter((row) => repeated.length > 0 && row < repeated[0]!);
        const head = shown(repeated);
        const body = rows.filter((row) => !above.includes(row) && !repeated.includes(row));
        return (
          <section
            key={start}
            class={`wb-sheet ${across ? 'across' : 'upright'}`}
            aria-label={starts.length > 1 ? `${sheet.name}, part ${part + 1}` : sheet.name}
          >
            {/* What stands above the repeated headings is a table of its own: headings come first in theirs. */}
            {above.length > 0 && (
              <Grid widths={widths} size={11 * scale}>
                <tbody>{above.map(line)}</tbody>
              </Grid>
            )}
            <Grid widths={widths} size={11 * scale}>
              {head.length > 0 && <thead>{head.map(line)}</thead>}
              <tbody>{body.map(line)}</tbody>
            </Grid>
            <p class="wb-foot">{sheet.name}</p>
          </section>
        );
      })}
    </>
  );
}

interface GridProps {
  readonly widths: readonly number[];
  readonly size: number;
  readonly children: ComponentChildren;
}

/** A table with columns of these widths, in points. */
function Grid({ widths, size, children }: GridProps) {
  return (
    <table style={{ fontSize: `${size}pt`, width: `${widths.reduce((sum, width) => sum + width, 0)}pt` }}>
      <colgroup>
        {widths.map((width, at) => (
          <col key={at} style={{ width: `${width}pt` }} />
        ))}
      </colgroup>
      {children}
    </table>
  );
}

function range(first: number, end: number): number[] {
  return Array.from({ length: Math.max(0, end - first) }, (_, at) => first + at);
}

/** A row; a text runs on over the blank cells to its right, as it does on the sheet. */
function Line(props: {
  readonly engine: Engine;
  readonly cells: readonly (Cell | null)[];
  readonly columns: readonly number[];
}) {
  const { engine, cells, columns } = props;
  const parts = [];
  for (let at = 0; at < columns.length; at++) {
    const cell = cells[columns[at]!] ?? null;
    let span = 1;
    if (cell && typeof cell.value === 'string' && !cell.wrap && cell.style !== 'heading') {
      while (at + span < columns.length && blank(cells[columns[at + span]!], cell.style)) span++;
    }
    const right = typeof cell?.value === 'number' || cell?.align === 'right';
    parts.push(
      <td
        key={at}
        colSpan={span}
        class={`${cell?.style ?? ''}${right ? ' right' : ''}${cell?.wrap ? ' wrap' : ''}${cell?.own?.bold ? ' bold' : ''}`}
        style={cell?.own?.fill && cell.own.fill !== 'none' ? { background: cell.own.fill } : undefined}
      >
        {cell ? shownText(engine, cell) : ''}
      </td>,
    );
    at += span - 1;
  }
  return <tr>{parts}</tr>;
}

/** Whether a text of this style may run on over the cell. */
function blank(cell: Cell | null | undefined, over: Cell['style']): boolean {
  if (!cell) return true;
  return (cell.value === null || cell.value === '') && [undefined, 'text', over].includes(cell.style);
}

/** As the cell shows it. */
function shownText({ library }: Engine, { value, format }: Cell): string {
  if (value === null) return '';
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  if (typeof value === 'string') return value;
  return library.core.numfmt.format(format ?? 'General', value, { throws: false });
}
