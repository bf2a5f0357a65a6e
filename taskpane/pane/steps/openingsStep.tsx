import type { Opening } from '../../../src/schedule/opening';
import { attentionFirst, troubledFields, type Placed } from '../attention';
import type { Bench } from '../deeds/bench';
import { FIELDS } from '../fields';
import { count, lengthText } from '../format';
import { FieldInput } from '../parts/fieldInput';
import { OpeningDrawing } from '../parts/openingDrawing';
import type { PaneState } from '../state';

/** The openings as read: what needs something first, each fixable where it stands. */
export function OpeningsStep({ bench, state }: { readonly bench: Bench; readonly state: PaneState }) {
  if (!state.schedule) return <p>Choose a list first.</p>;
  const { attention, ready } = attentionFirst(state.schedule.openings);
  const shownAttention = attention.slice(0, state.listed);
  const shownReady = ready.slice(0, Math.max(0, state.listed - shownAttention.length));
  const hidden = attention.length + ready.length - shownAttention.length - shownReady.length;
  return (
    <>
      <h1>{count(state.schedule.openings.length, 'opening')} as read</h1>
      <p class="tally" role="status">
        {attention.length > 0 && <span class="flag attention">{count(attention.length, 'opening')} to look at</span>}
        {ready.length > 0 && <span class="flag ready">{ready.length.toLocaleString()} ready</span>}
      </p>
      {attention.length > 0 && <p class="soft">An opening that still needs something keeps its row and says what.</p>}
      {attention.length > 0 && (
        <section aria-labelledby="attention-title">
          <h2 id="attention-title">To look at</h2>
          <ul class="openings">
            {shownAttention.map((placed) => (
              <Troubled key={placed.at} bench={bench} state={state} {...placed} />
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

function Troubled({ bench, state, at, opening }: OpeningProps) {
  return (
    <li class="card opening troubled">
      <h3>
        {opening.mark || 'No mark'} <span class="soft">row {opening.row}</span>
      </h3>
      <p class="size">{sizeText(opening, state, bench.options.locale)}</p>
      <ul class="troubles">
        {opening.problems.map((problem, index) => (
          <li key={index}>{problem.message}</li>
        ))}
      </ul>
      <div class="fields">
        {troubledFields(opening).map((field) => (
          <FieldInput
            key={field}
            bench={bench}
            state={state}
            at={at}
            opening={opening}
            field={field}
            onTaken={nextTrouble}
          />
        ))}
      </div>
      <Closer bench={bench} state={state} at={at} opening={opening} />
    </li>
  );
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
          {state.originals[at] && <span class="soft">, changed by you</span>}
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
  const above = troubled ? troubledFields(opening) : [];
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
      {state.originals[at] && (
        <button
          type="button"
          class="fit"
          onClick={() => {
            bench.store.send({ type: 'opening put back', at });
            requestAnimationFrame(() => document.getElementById(`mark-${at}`)?.focus());
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

/** Enter in a fixed field goes on to the next thing that needs something, or to the way on. */
function nextTrouble(): void {
  requestAnimationFrame(() => {
    const next = document.querySelector<HTMLElement>('.troubled > .fields :is(input, select)');
    (next ?? document.querySelector<HTMLElement>('.next .main'))?.focus();
  });
}
