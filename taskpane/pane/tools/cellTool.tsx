import { callsIn } from '../../../src/workbook/formulas/calls';
import { useEffect, useState } from 'preact/hooks';
import type { Explanation } from '../cell/explain';
import type { Bench } from '../deeds/bench';
import { followCell } from '../deeds/followCell';
import { functionHelp } from '../help';
import { HelpLink } from '../parts/helpLink';
import { OpeningDrawing } from '../parts/openingDrawing';
import type { FigureApart } from '../figure/apart';
import { WhatItMeans } from '../parts/whatItMeans';
import type { OpeningTakeoff, Takeoff } from '../../../src/takeoff/takeoff';
import { takeoffOnce } from '../deeds/rowAtHand';
import type { PaneState } from '../state';

/** What there is to know about the selected cell: an opening of the takeoff, or why a formula gives no figure. */
export function CellTool({ bench, state }: { readonly bench: Bench; readonly state: PaneState }) {
  useEffect(() => followCell(bench), [bench]);
  const { cell } = state;
  const [row, setRow] = useState<InRow | null>(null);
  const [explained, setExplained] = useState<readonly Explanation[]>([]);
  useEffect(() => {
    let over = false;
    void lookInto(bench, cell).then((found) => {
      if (over) return;
      setRow(found.row);
      setExplained(found.explained);
    });
    return () => {
      over = true;
    };
  }, [bench, cell]);
  if (!cell) {
    return (
      <>
        <h1>This cell</h1>
        <p>
          Click a cell in the sheet. A row of the Takeoff shows its opening; a cell with an ARCH formula says how it
          came about.
        </p>
      </>
    );
  }
  const failed = typeof cell.value === 'string' && cell.value.startsWith('#');
  return (
    <>
      <h1>
        {cell.sheet}, {cell.address}
      </h1>
      {cell.formula !== '' && <p class="formula">{cell.formula}</p>}
      <div aria-live="polite" class="explained">
        {explained.map((one, index) => (
          <ExplainedCall key={index} one={one} value={cell.value} failed={failed} />
        ))}
        {explained.length === 0 && failed && cell.error && <p class="needs">{cell.error}</p>}
      </div>
      {row && <RowOpening bench={bench} row={row} state={state} />}
      {!row && explained.length === 0 && !failed && (
        <p class="soft">
          No opening and no ARCH formula is in this cell. Select a row of the Takeoff, or a cell with an ARCH formula.
        </p>
      )}
    </>
  );
}

/** The opening in the selected row, as it stands in the takeoff. */
interface InRow {
  readonly taken: Takeoff;
  readonly at: number;
  readonly figures: readonly FigureApart[];
  /** Name of the figure in the selected column. */
  readonly chosen: string | null;
}

async function lookInto(
  bench: Bench,
  cell: PaneState['cell'],
): Promise<{ readonly row: InRow | null; readonly explained: readonly Explanation[] }> {
  if (!cell) return { row: null, explained: [] };
  const row = cell.sheet === 'Takeoff' ? await rowAt(bench, cell.row, cell.column) : null;
  const failed = typeof cell.value === 'string' && cell.value.startsWith('#');
  // A figure of the takeoff is taken apart itself; the call that asks for it by name says no more.
  const arch = callsIn(cell.formula).length > 0 && (row?.chosen == null || failed);
  const explained = arch
    ? await (
        await import('../cell/explain')
      ).explain(cell.formula, cell.error, async (name) => {
        const table = await bench.host.readSheet(name ?? cell.sheet);
        return table.ok ? table.value : null;
      })
    : [];
  return { row, explained };
}

async function rowAt(bench: Bench, row: number, column: number): Promise<InRow | null> {
  const taken = await takeoffOnce(bench);
  // Openings of a workbook know the row of the sheet where they stand.
  const at = taken?.openings.findIndex(({ opening }) => opening.row === row + 1) ?? -1;
  if (taken === null || at < 0) return null;
  const [{ figuresApart }, { TAKEOFF_COLUMNS }] = await Promise.all([
    import('../figure/apart'),
    import('../../../src/workbook/takeoff/columns'),
  ]);
  const chosen = TAKEOFF_COLUMNS[column]?.shows ?? null;
  const figures = figuresApart(taken, taken.openings[at]!, bench.options.locale);
  const first = figures.filter(({ name }) => name === chosen);
  return { taken, at, chosen, figures: [...first, ...figures.filter(({ name }) => name !== chosen)] };
}

function ExplainedCall({
  one,
  value,
  failed,
}: {
  readonly one: Explanation;
  readonly value: unknown;
  readonly failed: boolean;
}) {
  return (
    <section class="card" aria-label={`ARCH.${one.name}`}>
      <h2>ARCH.{one.name}</h2>
      {one.sentence === null ? (
        <p class="soft">
          {failed ? 'This part gives a figure; the trouble lies elsewhere in the formula.' : one.about}
        </p>
      ) : (
        <p class="needs">{one.sentence}</p>
      )}
      <dl class="arguments">
        {one.args.map((argument, index) => (
          <div key={index}>
            <dt>{argument.name}</dt>
            <dd>
              <span class="saw">{argument.saw ?? 'worked out inside the formula'}</span>
              {argument.written !== '' && argument.written !== argument.saw && <code>{argument.written}</code>}
              <span class="soft about">{argument.about}</span>
            </dd>
          </div>
        ))}
      </dl>
      {!failed && one.sentence === null && typeof value === 'number' && <p class="soft">Gives {value}.</p>}
      <HelpLink to={functionHelp(one.name)}>All about ARCH.{one.name}</HelpLink>
    </section>
  );
}

function RowOpening({ bench, row, state }: { readonly bench: Bench; readonly row: InRow; readonly state: PaneState }) {
  const { taken, at, figures, chosen } = row;
  const { opening, needs, attention, sideUnsaid, no }: OpeningTakeoff = taken.openings[at]!;
  return (
    <>
      <section class="card" aria-label="The opening in this row">
        <h2>
          {opening.mark || `No. ${no}`}
          {opening.quantity !== null && <span class="soft"> {opening.quantity} ×</span>}
        </h2>
        <OpeningDrawing opening={opening} standards={state.standards} locale={bench.options.locale} />
        {[...needs, ...attention, ...sideUnsaid].map((sentence) => (
          <p key={sentence} class="needs">
            {sentence}
          </p>
        ))}
      </section>
      {figures.length > 0 && (
        <section class="card" aria-label="How its figures come about">
          <h2>How its figures come about</h2>
          {figures.map((figure) => (
            <Apart key={`${no} ${figure.name}`} figure={figure} open={figure.name === chosen} />
          ))}
        </section>
      )}
      {figures.length > 0 && <WhatItMeans key={`${no}`} bench={bench} taken={taken} at={at} />}
    </>
  );
}

function Apart({ figure, open }: { readonly figure: FigureApart; readonly open: boolean }) {
  const { heading, value, by, from, how } = figure;
  return (
    <details open={open} class="left-out">
      <summary>
        {heading}: <strong>{value}</strong>
      </summary>
      <p class="soft">{by}</p>
      {how !== '' && <p class="soft">{how}</p>}
      <dl class="arguments">
        {from.map((each) => (
          <div key={each.name}>
            <dt>{each.name}</dt>
            <dd>
              <span class="saw">{each.value}</span>
            </dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
