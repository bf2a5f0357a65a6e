import { describe, expect, it } from 'vitest';
import { type Action, reduce } from '../../../taskpane/pane/reducer';
import { canGo, initialState, LIST_PAGE, type PaneState } from '../../../taskpane/pane/state';
import { defaultStandards } from '../../../src/standards';
import { opening, scheduleOf } from './opening';

const start = initialState(defaultStandards());
const table = { name: 'List', firstRow: 1, rows: [['Mark'], ['W1']] };
const filled = {
  openings: 1,
  priced: 1,
  price: 10,
  extras: null,
  extrasNotPriced: 0,
  sheets: [],
  said: [],
  toLookAt: [],
};

const inches = (text: string) => ({ text, unit: 'in' as const });

function after(...actions: readonly Action[]): PaneState {
  return actions.reduce(reduce, start);
}

const read: readonly Action[] = [
  { type: 'table chosen', table },
  { type: 'schedule read', schedule: scheduleOf([opening(), opening({ row: 3, mark: 'W2' })]) },
];

describe('the steps', () => {
  it('cannot be walked before a list was read', () => {
    expect(canGo(start, 'headings')).toBe(false);
    expect(after({ type: 'stepped', step: 'fill' })).toBe(start);
  });

  it('are all open once openings were read', () => {
    expect(after(...read, { type: 'stepped', step: 'fill' }).step).toBe('fill');
  });

  it('stay shut after the headings where a list holds no opening', () => {
    const empty = after({ type: 'table chosen', table }, { type: 'schedule read', schedule: scheduleOf([]) });
    expect(canGo(empty, 'headings')).toBe(true);
    expect(canGo(empty, 'openings')).toBe(false);
  });

  it('stay where they are while something is under way', () => {
    const busy = after(...read, { type: 'working', work: { what: 'Reading', done: 0, of: null, canStop: false } });
    expect(reduce(busy, { type: 'stepped', step: 'fill' })).toBe(busy);
  });
});

describe('choosing another list', () => {
  it('forgets what was known of the list before', () => {
    const before = after(
      ...read,
      { type: 'meaning chosen', column: 0, meaning: 'ignore' },
      { type: 'opening fixed', at: 0, opening: opening({ rise: 7 }), field: 'rise', typed: inches('7') },
      { type: 'filled', filled },
    );
    const next = reduce(before, { type: 'table chosen', table: { ...table, name: 'Other' } });
    expect(next).toMatchObject({ choices: {}, schedule: null, edits: {}, refused: {}, filled: null });
    expect(next.table?.name).toBe('Other');
  });
});

describe('fixing an opening', () => {
  it('changes that opening alone, even where two come from one source row', () => {
    const twins = scheduleOf([opening({ mark: 'A' }), opening({ mark: 'B' })]);
    const state = after(
      { type: 'table chosen', table },
      { type: 'schedule read', schedule: twins },
      { type: 'opening fixed', at: 1, opening: opening({ mark: 'B', rise: 9 }), field: 'rise', typed: inches('9') },
    );
    expect(state.schedule?.openings.map((one) => one.rise)).toEqual([6, 9]);
    expect(state.edits).toEqual({ 1: { rise: inches('9') } });
  });

  it('can be taken back, to the opening as the list gave it', () => {
    const state = after(
      ...read,
      { type: 'opening fixed', at: 0, opening: opening({ rise: 7 }), field: 'rise', typed: inches('7') },
      { type: 'opening fixed', at: 0, opening: opening({ rise: 8 }), field: 'rise', typed: inches('8') },
      { type: 'opening put back', at: 0 },
    );
    expect(state.schedule?.openings[0]?.rise).toBe(6);
    expect(state).toMatchObject({ edits: {}, originals: {}, refused: {} });
  });

  it('clears the sentence that stood against the field, and no other', () => {
    const state = after(
      ...read,
      { type: 'figure refused', at: 0, field: 'rise', message: 'Rise cannot be read.' },
      { type: 'figure refused', at: 0, field: 'span', message: 'Span cannot be read.' },
      { type: 'opening fixed', at: 0, opening: opening({ rise: 7 }), field: 'rise', typed: inches('7') },
    );
    expect(state.refused[0]).toEqual({ span: 'Span cannot be read.' });
  });

  it('withdraws the sentence where the text is put back as it was', () => {
    const state = after(
      ...read,
      { type: 'figure refused', at: 0, field: 'rise', message: 'Rise cannot be read.' },
      { type: 'figure refused', at: 0, field: 'rise', message: null },
    );
    expect(state.refused[0]).toEqual({});
    expect(state.originals).toEqual({});
  });

  it('makes a fill of before out of date', () => {
    const state = after(...read, { type: 'filled', filled });
    expect(state.filled).toBe(filled);
    const next = reduce(state, { type: 'opening fixed', at: 0, opening: opening(), field: 'rise', typed: inches('6') });
    expect(next.filled).toBeNull();
  });
});

describe('notices', () => {
  it('go when the next work starts, not when work goes on', () => {
    const work = { what: 'Reading', done: 0, of: 10, canStop: true };
    const told = after({ type: 'told', notice: { tone: 'error', text: 'No.' } });
    expect(reduce(told, { type: 'working', work }).notice).toBeNull();
    const during = reduce(after({ type: 'working', work }), { type: 'told', notice: { tone: 'error', text: 'No.' } });
    expect(reduce(during, { type: 'working', work: { ...work, done: 5 } }).notice?.text).toBe('No.');
  });
});

describe('the list of openings', () => {
  it('grows by a page', () => {
    expect(after({ type: 'more listed' }).listed).toBe(2 * LIST_PAGE);
  });
});
