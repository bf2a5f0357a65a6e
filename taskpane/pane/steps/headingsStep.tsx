import { MEANINGS, type MeaningKey } from '../../../src/schedule/meanings';
import type { Schedule } from '../../../src/schedule/opening';
import { chooseMeaning } from '../deeds/chooseList';
import type { Bench } from '../deeds/bench';
import { count } from '../format';
import { ColumnChoice } from '../parts/columnChoice';
import { samplesOf } from '../samples';
import type { ListRead, PaneState } from '../state';

/** What each column was understood as, with a few of its cells to judge by. */
export function HeadingsStep({ bench, state }: { readonly bench: Bench; readonly state: PaneState }) {
  const { schedule, table } = state;
  if (!schedule || !table) return <p>Choose a list first.</p>;
  const columns = schedule.headings.map((heading, column) => ({
    column,
    heading,
    meaning: (schedule.meaning[column] ?? 'ignore') as MeaningKey,
  }));
  const used = columns.filter((one) => one.meaning !== 'ignore');
  const left = columns.filter((one) => one.meaning === 'ignore');
  return (
    <>
      <h1>What each column holds</h1>
      <p>{foundSentence(schedule)}</p>
      <ul class="columns">
        {used.map((one) => (
          <Column key={one.column} bench={bench} state={state} {...one} />
        ))}
      </ul>
      {left.length > 0 && (
        <details class="left-out" open={used.length === 0}>
          <summary>{left.length === 1 ? 'One column is' : `${left.length} columns are`} not used</summary>
          <ul class="columns">
            {left.map((one) => (
              <Column key={one.column} bench={bench} state={state} {...one} />
            ))}
          </ul>
        </details>
      )}
      {(schedule.unread?.length ?? 0) + schedule.remarks.length > 0 && <Said schedule={schedule} />}
      {schedule.passedOver.length > 0 && <PassedOver schedule={schedule} />}
      <div class="next">
        <button
          type="button"
          class="main"
          disabled={schedule.openings.length === 0}
          onClick={() => bench.store.send({ type: 'stepped', step: 'openings' })}
        >
          {schedule.openings.length === 0
            ? 'No openings found yet'
            : `See the ${count(schedule.openings.length, 'opening')}`}
        </button>
      </div>
    </>
  );
}

function foundSentence(schedule: Schedule): string {
  const headings =
    schedule.headingRow === null ? 'No headings were found' : `Headings found in row ${schedule.headingRow}`;
  return `${schedule.name}: ${headings}, ${count(schedule.openings.length, 'opening')} below. Change what was taken wrong.`;
}

const OPTIONS = MEANINGS.map(({ key, label }) => ({ value: key, label }));

interface ColumnProps {
  readonly bench: Bench;
  readonly state: PaneState;
  readonly column: number;
  readonly heading: string;
  readonly meaning: MeaningKey;
}

function Column({ bench, state, column, heading, meaning }: ColumnProps) {
  return (
    <ColumnChoice
      id={`meaning-${column}`}
      column={column}
      heading={heading}
      value={meaning}
      options={OPTIONS}
      choose={(key) => chooseMeaning(bench, column, key as MeaningKey)}
      samples={state.schedule ? samplesOf(state.schedule, column) : []}
    />
  );
}

/** What of the file was not read, and what is worth knowing about it. */
function Said({ schedule }: { readonly schedule: ListRead }) {
  const { unread = [], remarks } = schedule;
  return (
    <details class="left-out" open>
      <summary>{unread.length > 0 ? 'Not read, and what to know' : 'What to know of the file'}</summary>
      <ul class="facts">
        {unread.map(({ what, why }, index) => (
          <li key={index}>
            Not read: {what}, {why}.
          </li>
        ))}
        {remarks.map((remark, index) => (
          <li key={index}>{remark}</li>
        ))}
      </ul>
    </details>
  );
}

function PassedOver({ schedule }: { readonly schedule: Schedule }) {
  const shown = schedule.passedOver.slice(0, 50);
  return (
    <details class="left-out">
      <summary>{count(schedule.passedOver.length, 'row')} passed over</summary>
      <ul class="facts">
        {shown.map((one) => (
          <li key={one.row}>
            Row {one.row}: {one.why}
            {one.text !== '' && <span class="soft"> {one.text}</span>}
          </li>
        ))}
      </ul>
      {shown.length < schedule.passedOver.length && (
        <p class="soft">The first {shown.length} are listed; the Schedule sheet holds them all.</p>
      )}
    </details>
  );
}
