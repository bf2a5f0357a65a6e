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
  repriced: [],
  toLookAt: [],
};

const answers = { 'rise@2': { text: '7 in', about: 'Rise of W1' } };
const answered: Action = {
  type: 'answered',
  answers,
  schedule: scheduleOf([opening({ rise: 7 }), opening({ row: 3, mark: 'W2' })]),
};

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
    const before = after(...read, { type: 'meaning chosen', column: 0, meaning: 'ignore' }, answered, {
      type: 'filled',
      filled,
    });
    const next = reduce(before, { type: 'table chosen', table: { ...table, name: 'Other' } });
    expect(next).toMatchObject({ choices: {}, schedule: null, answers: {}, refused: {}, filled: null });
    expect(next.table?.name).toBe('Other');
  });
});

describe('an answer', () => {
  it('keeps open what is looked at, though rows before it were left out', () => {
    const state = after(
      ...read,
      { type: 'opening looked at', at: 1 },
      { type: 'answered', answers: {}, schedule: scheduleOf([opening({ row: 3, mark: 'W2' })]) },
    );
    expect(state.openAt).toBe(0);
  });

  it('clears the sentence that stood against it, and no other', () => {
    const state = after(
      ...read,
      { type: 'answer refused', key: 'rise@2', message: 'Rise cannot be read.' },
      { type: 'answer refused', key: 'span@2', message: 'Span cannot be read.' },
      answered,
    );
    expect(state.refused).toEqual({ 'span@2': 'Span cannot be read.' });
  });

  it('that was refused is forgotten where the text is put back as it was', () => {
    const state = after(
      ...read,
      { type: 'answer refused', key: 'rise@2', message: 'Rise cannot be read.' },
      { type: 'answer refused', key: 'rise@2', message: null },
    );
    expect(state.refused).toEqual({});
  });

  it('makes a fill of before out of date', () => {
    const state = after(...read, { type: 'filled', filled });
    expect(state.filled).toBe(filled);
    expect(reduce(state, answered).filled).toBeNull();
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
