import { useState } from 'preact/hooks';
import { cutText } from '../../../src/stock/cuttext';
import type { StockPlan } from '../../../src/stock/plan';
import { lookLonger, planSelection, writePlan, type Planned } from '../deeds/planCutting';
import type { Bench } from '../deeds/bench';
import { count, decimal, lengthText, typedLength } from '../format';
import type { PaneState } from '../state';

/** A cutting plan for any lengths in the sheet; the takeoff's own stands on the Stock sheet. */
export function PlanTool({ bench, state }: { readonly bench: Bench; readonly state: PaneState }) {
  const { standards } = state;
  const { unit, kerf, endTrim } = standards;
  const { locale } = bench.options;
  const say = (length: number) => lengthText(length, unit, locale);
  const [boards, setBoards] = useState(() =>
    [...new Set(standards.stock.map((board) => board.length))].map((one) => typedLength(one, unit, 'en-US')).join(', '),
  );
  const [planned, setPlanned] = useState<Planned | null>(null);
  const keep = (next: Planned | null | undefined) => {
    // Stopped or refused: the plan at hand stands.
    if (next) setPlanned(next);
  };
  const plan = planned?.plan;
  return (
    <section class="card" aria-labelledby="plan-title">
      <h2 id="plan-title">Cutting plan for any lengths</h2>
      <p>
        Select lengths and how many of each, two columns side by side. Saw kerf {say(kerf)}, end trim {say(endTrim)}.
      </p>
      <div class="field wide-field">
        <label for="plan-boards">Board lengths on sale</label>
        <input
          id="plan-boards"
          type="text"
          autocomplete="off"
          value={boards}
          onInput={(event) => setBoards(event.currentTarget.value)}
        />
      </div>
      <button type="button" onClick={async () => keep(await planSelection(bench, boards))}>
        Plan the selected lengths
      </button>
      {planned && plan && (
        <div class="plan" role="group" aria-label="The plan">
          <p class="tally" role="status">
            <span class="flag ready">{count(plan.boards, 'board')}</span>
            <span class={`flag ${plan.proven ? 'ready' : 'attention'}`}>{proofText(plan, locale)}</span>
            <span class="flag">{decimal(plan.yield * 100, 1, locale)} % used</span>
          </p>
          <table>
            <thead>
              <tr>
                <th scope="col">Boards</th>
                <th scope="col">Length</th>
                <th scope="col">Cut</th>
                <th scope="col">Left</th>
              </tr>
            </thead>
            <tbody>
              {rowsOf(plan, (length) => typedLength(length, unit, locale)).map((row, index) => (
                <tr key={index}>
                  {row.map((cell, column) => (
                    <td key={column}>{cell}</td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
          <div class="pair">
            {!plan.proven && (
              <button type="button" onClick={async () => keep(await lookLonger(bench, planned))}>
                Look longer
              </button>
            )}
            <button
              type="button"
              onClick={() =>
                writePlan(bench, [
                  ['Boards', 'Length', 'Cut', 'Left'],
                  ...rowsOf(plan, (length) => typedLength(length, unit, locale)),
                ])
              }
            >
              Put it from the selected cell on
            </button>
          </div>
        </div>
      )}
    </section>
  );
}

function proofText({ proven, gap, measure }: StockPlan, locale?: string): string {
  if (proven) return measure === 'boards' ? 'none needs fewer' : 'none costs less';
  return measure === 'boards'
    ? `within ${count(gap, 'board')} of the fewest`
    : `within ${decimal(gap, 2, locale)} of the least`;
}

function rowsOf(plan: StockPlan, say: (length: number) => string): readonly (readonly (string | number)[])[] {
  return plan.plan.map(({ count: boards, stock, cuts, offcut }) => [
    boards,
    say(stock),
    cutText(cuts, say),
    say(Math.round(offcut * 64) / 64),
  ]);
}
