import { rowsNamed } from '../../../src/schedule/asked';
import { markOrRow, type Opening, type Problem } from '../../../src/schedule/opening';
import { attentionFirst, troubledFields, type Placed } from '../attention';
import type { Bench } from '../deeds/bench';
import { answer, answersTo, fixOpening, isAnswered, putBack } from '../deeds/fixOpening';
import { FIELDS } from '../fields';
import { count, lengthText } from '../format';
import { FieldInput } from '../parts/fieldInput';
import { focusFollowing } from '../parts/following';
import { OpeningDrawing } from '../parts/openingDrawing';
import type { PaneState } from '../state';
import { Choices, Questions, questionsAbove } from './questions';

/** The openings as read: what needs something first, each fixable where it stands. */
export function OpeningsStep({ bench, state }: { readonly bench: Bench; readonly state: PaneState }) {
  if (!state.schedule) return <p>Choose a list first.</p>;
  const { attention, ready } = attentionFirst(state.schedule.openings);
  const asked = questionsAbove(state.schedule);
  const above = new Set([...asked.remarks, ...asked.others].map(({ id }) => id));
  const isElsewhere = (question: string) => above.has(question) || rowsNamed(question) !== null;
  const waits = ({ opening }: Placed) => opening.problems.every(({ question }) => question && isElsewhere(question));
  const own = attention.filter((one) => !waits(one));
  const waiting = attention.filter(waits);
  const shownAttention = own.slice(0, state.listed);
  const shownWaiting = waiting.slice(0, Math.max(0, state.listed - shownAttention.length));
  const shown = shownAttention.length + shownWaiting.length;
  const shownReady = ready.slice(0, Math.max(0, state.listed - shown));
  const hidden = attention.length + ready.length - shown - shownReady.length;
  return (
    <>
      <h1>{count(state.schedule.openings.length, 'opening')} as read</h1>
      <p class="tally" role="status">
        {attention.length > 0 && <span class="flag attention">{count(attention.length, 'opening')} to look at</span>}
        {ready.length > 0 && <span class="flag ready">{ready.length.toLocaleString()} ready</span>}
      </p>
      {attention.length > 0 && <p class="soft">An opening that still needs something keeps its row and says what.</p>}
      <Questions bench={bench} state={state} {...asked} />
      {own.length > 0 && (
        <section aria-labelledby="attention-title">
          <h2 id="attention-title">To look at</h2>
          <ul class="openings">
            {shownAttention.map((placed) => (
              <Troubled key={placed.at} bench={bench} state={state} above={above} {...placed} />
            ))}
          </ul>
        </section>
      )}
      {shownWaiting.length > 0 && (
        <section aria-labelledby="waiting-title">
          <h2 id="waiting-title">Waiting for an answer above</h2>
          <ul class="openings ready">
            {shownWaiting.map((placed) => (
              <Ready key={placed.at} bench={bench} state={state} {...placed} />
            ))}
          </ul>
        </section>
      )}
      {shownReady.length > 0 && (
        <section aria-labelledby="ready-title">
          <h2 id="ready-title">Ready</h2>
          <ul class="openings ready">
            {shownReady.map((placed) => (
              <Ready key={placed.at} bench={bench} state={state} {...placed} />
            ))}
          </ul>
        </section>
      )}
      {hidden > 0 && (
        <button type="button" class="wide" onClick={() => bench.store.send({ type: 'more listed' })}>
          Show more: {hidden.toLocaleString()} not listed yet
        </button>
      )}
      <div class="next">
        <button type="button" class="main" onClick={() => bench.store.send({ type: 'stepped', step: 'fill' })}>
          Go on to fill the workbook
        </button>
      </div>
    </>
  );
}

interface OpeningProps extends Placed {
  readonly bench: Bench;
  readonly state: PaneState;
}

function Troubled({ bench, state, at, opening, above }: OpeningProps & { readonly above: ReadonlySet<string> }) {
  const own = opening.problems.filter(({ question }) => question === undefined);
  return (
    <li class="card opening troubled" data-asks={`row ${opening.at ?? opening.row}`}>
      <h3>
        {opening.mark || 'No mark'} <span class="soft">row {opening.row}</span>
      </h3>
      <p class="size">{sizeText(opening, state, bench.options.locale)}</p>
      <ul class="troubles">
        {opening.problems.map((problem, index) => (
          <li key={index}>
            {problem.message}
            {problem.question !== undefined && above.has(problem.question) ? (
              <span class="soft"> It is asked above.</span>
            ) : (
              <Offered bench={bench} opening={opening} problem={problem} at={at} />
            )}
          </li>
        ))}
      </ul>
      <div class="fields">
        {troubledFields({ problems: own }).map((field) => (
          <FieldInput
            key={field}
            bench={bench}
            state={state}
            at={at}
            opening={opening}
            field={field}
            onTaken={() => nextTrouble(opening)}
          />
        ))}
      </div>
      <Closer bench={bench} state={state} at={at} opening={opening} />
    </li>
  );
}

/** What the list itself offers for an answer, one press each. */
function Offered({ bench, opening, problem, at }: Omit<OpeningProps, 'state'> & { readonly problem: Problem }) {
  const { choices = [], question, field, message } = problem;
  if (choices.length === 0) return null;
  const take = (choice: string, focused: Element | null) => {
    const near = focused?.closest('[data-asks]') ?? null;
    void focusFollowing(near, () =>
      question === undefined
        ? fixOpening(bench, at, field, choice)
        : answer(bench, answersTo(question, choice, message)),
    );
  };
  return <Choices choices={choices} of={markOrRow(opening)} take={take} />;
}

function Ready({ bench, state, at, opening }: OpeningProps) {
  const open = state.openAt === at;
  return (
    <li class={`opening ready${open ? ' card' : ''}`}>
      <button
        type="button"
        class="opening-line"
        aria-expanded={open}
        onClick={() => bench.store.send({ type: 'opening looked at', at: open ? null : at })}
      >
        <strong>{opening.mark || `Row ${opening.row}`}</strong>
        <span class="times">{opening.quantity ?? '–'} ×</span>
        <span>
          {sizeText(opening, state, bench.options.locale)}
          {isAnswered(state.answers, opening) && <span class="soft">, changed by you</span>}
        </span>
      </button>
      {open && <Inside bench={bench} state={state} at={at} opening={opening} />}
    </li>
  );
}

function Closer({ bench, state, at, opening }: OpeningProps) {
  const open = state.openAt === at;
  return (
    <>
      <button
        type="button"
        class="quiet"
        aria-expanded={open}
        onClick={() => bench.store.send({ type: 'opening looked at', at: open ? null : at })}
      >
        {open ? 'Less' : 'Everything about it'}
        <span class="hidden"> for {opening.mark || `row ${opening.row}`}</span>
      </button>
      {open && <Inside bench={bench} state={state} at={at} opening={opening} troubled />}
    </>
  );
}

/** Drawing, every figure, and how figures came about. */
function Inside({ bench, state, at, opening, troubled = false }: OpeningProps & { readonly troubled?: boolean }) {
  const above = troubled
    ? troubledFields({ problems: opening.problems.filter(({ question }) => question === undefined) })
    : [];
  return (
    <div class="inside">
      <OpeningDrawing opening={opening} standards={state.standards} locale={bench.options.locale} />
      <div class="fields">
        {FIELDS.filter((field) => !above.includes(field.key)).map((field) => (
          <FieldInput key={field.key} bench={bench} state={state} at={at} opening={opening} field={field.key} />
        ))}
      </div>
      {opening.notes.length > 0 && (
        <ul class="facts">
          {opening.notes.map((note, index) => (
            <li key={index}>{note}</li>
          ))}
        </ul>
      )}
      {isAnswered(state.answers, opening) && (
        <button
          type="button"
          class="fit"
          onClick={() => {
            void putBack(bench, opening).then(() =>
              requestAnimationFrame(() => document.getElementById(`mark-${at}`)?.focus()),
            );
          }}
        >
          Put back what the list says
        </button>
      )}
      <p class="soft source">
        Row {opening.row} said: {opening.source.filter((cell) => cell !== '').join(' · ') || 'nothing'}
      </p>
    </div>
  );
}

function sizeText(opening: Opening, state: PaneState, locale?: string): string {
  const unit = state.standards.unit;
  const parts = [opening.head ?? 'head not known'];
  if (opening.span !== null) parts.push(`span\u00a0${lengthText(opening.span, unit, locale)}`);
  if (opening.rise !== null) parts.push(`rise\u00a0${lengthText(opening.rise, unit, locale)}`);
  return parts.join(', ');
}

/** Enter in a fixed field goes on to what follows from it, the next thing that needs something, or the way on. */
function nextTrouble({ row, at }: Opening): void {
  const own = `[data-asks="row ${at ?? row}"]`;
  requestAnimationFrame(() => {
    const next = [own, '.troubled'].flatMap((where) => [
      ...document.querySelectorAll<HTMLElement>(`${where} :is(.answers button, .fields > .field :is(input, select))`),
    ])[0];
    (next ?? document.querySelector<HTMLElement>('.next .main'))?.focus();
  });
}
