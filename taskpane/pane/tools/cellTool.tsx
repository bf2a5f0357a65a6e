import { useEffect, useState } from 'preact/hooks';
import type { Opening } from '../../../src/schedule/opening';
import type { Unit } from '../../../src/unit';
import type { Explanation } from '../cell/explain';
import type { Bench } from '../deeds/bench';
import { followCell } from '../deeds/followCell';
import { money } from '../format';
import { OpeningDrawing } from '../parts/openingDrawing';
import { takeOne } from '../openingFigures';
import type { PaneState } from '../state';

/** What there is to know about the selected cell: an opening of the takeoff, or why a formula gives no figure. */
export function CellTool({ bench, state }: { readonly bench: Bench; readonly state: PaneState }) {
  useEffect(() => followCell(bench), [bench]);
  const { cell } = state;
  const { unit } = state.standards;
  const [opening, setOpening] = useState<Opening | null>(null);
  const [explained, setExplained] = useState<readonly Explanation[]>([]);
  useEffect(() => {
    let over = false;
    void lookInto(bench, cell, unit).then((found) => {
      if (over) return;
      setOpening(found.opening);
      setExplained(found.explained);
    });
    return () => {
      over = true;
    };
  }, [bench, cell, unit]);
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
      {opening && <RowOpening opening={opening} state={state} locale={bench.options.locale} />}
      {!opening && explained.length === 0 && !failed && (
        <p class="soft">
          No opening and no ARCH formula is in this cell. Select a row of the Takeoff, or a cell with an ARCH formula.
        </p>
      )}
    </>
  );
}

async function lookInto(
  bench: Bench,
  cell: PaneState['cell'],
  unit: Unit,
): Promise<{ readonly opening: Opening | null; readonly explained: readonly Explanation[] }> {
  if (!cell) return { opening: null, explained: [] };
  const arch = /ARCH[._]/i.test(cell.formula);
  const explained = arch
    ? await (
        await import('../cell/explain')
      ).explain(cell.formula, cell.error, async (name) => {
        const table = await bench.host.readSheet(name ?? cell.sheet);
        return table.ok ? table.value : null;
      })
    : [];
  if (cell.sheet !== 'Takeoff') return { opening: null, explained };
  const table = await bench.host.readSheet('Takeoff');
  if (!table.ok || !table.value) return { opening: null, explained };
  const { openingInRow } = await import('../cell/takeoffRow');
  return { opening: openingInRow(table.value, cell.row + 1, unit), explained };
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
    </section>
  );
}

function RowOpening({
  opening,
  state,
  locale,
}: {
  readonly opening: Opening;
  readonly state: PaneState;
  readonly locale?: string;
}) {
  const taken = takeOne(opening, state.standards);
  return (
    <section class="card" aria-label="The opening in this row">
      <h2>
        {opening.mark || `Row ${opening.row}`}
        {opening.quantity !== null && <span class="soft"> {opening.quantity} ×</span>}
      </h2>
      <OpeningDrawing opening={opening} standards={state.standards} locale={locale} />
      {taken?.needs.map((need) => (
        <p key={need} class="needs">
          {need}
        </p>
      ))}
      {taken?.attention.map((about) => (
        <p key={about} class="needs">
          {about}
        </p>
      ))}
      {taken?.cost && (
        <p class="soft">
          Alone it would cost {money(taken.cost.unitPrice, locale)} each; in the takeoff it shares knives and set-ups.
        </p>
      )}
    </section>
  );
}
