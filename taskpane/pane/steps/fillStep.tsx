import { notSetSentence } from '../../../src/notSet';
import { attentionFirst } from '../attention';
import { fill, show } from '../deeds/fill';
import type { Bench } from '../deeds/bench';
import { count, money } from '../format';
import { Ask } from '../parts/ask';
import type { Filled, PaneState } from '../state';

/** Fill the workbook, and where to look once it is done. */
export function FillStep({ bench, state }: { readonly bench: Bench; readonly state: PaneState }) {
  if (!state.schedule) return <p>Choose a list first.</p>;
  if (state.filled) return <Done bench={bench} state={state} filled={state.filled} />;
  const { attention } = attentionFirst(state.schedule.openings);
  return (
    <>
      <h1>Fill the workbook</h1>
      <p>
        Five sheets are written: Takeoff, Stock, Setups, Schedule and Standards. All others are left alone.
        {attention.length > 0 && ` ${count(attention.length, 'opening')} will say in the Takeoff what is still needed.`}
      </p>
      <NotSet bench={bench} state={state} />
      <fieldset class="card">
        <legend>Formulas in the workbook</legend>
        <Choice
          bench={bench}
          state={state}
          plain={false}
          label="ARCH formulas"
          about="Short and readable; they calculate where Archwright is installed."
        />
        <Choice
          bench={bench}
          state={state}
          plain={true}
          label="Plain formulas"
          about="Longer; they calculate anywhere. Choose this to send the workbook on."
        />
      </fieldset>
      {state.inTheWay ? (
        <InTheWay bench={bench} state={state} />
      ) : (
        <div class="next">
          <button id="fill" type="button" class="main" disabled={state.work !== null} onClick={() => fill(bench, [])}>
            Fill the workbook
          </button>
        </div>
      )}
    </>
  );
}

/** Which of the machine's settings nobody has set yet, and the way there. */
function NotSet({ bench, state }: { readonly bench: Bench; readonly state: PaneState }) {
  const sentence = notSetSentence(state.standards);
  if (sentence === '') return null;
  return (
    <div class="card">
      <p>{sentence}</p>
      <button type="button" class="quiet" onClick={() => bench.store.send({ type: 'went', place: 'shop' })}>
        Set them under Shop
      </button>
    </div>
  );
}

interface ChoiceProps {
  readonly bench: Bench;
  readonly state: PaneState;
  readonly plain: boolean;
  readonly label: string;
  readonly about: string;
}

function Choice({ bench, state, plain, label, about }: ChoiceProps) {
  const id = plain ? 'formulas-plain' : 'formulas-arch';
  return (
    <div class="choice">
      <input
        id={id}
        type="radio"
        name="formulas"
        checked={state.plain === plain}
        aria-describedby={`${id}-about`}
        onChange={() => bench.store.send({ type: 'formulas chosen', plain })}
      />
      <label for={id}>{label}</label>
      <p id={`${id}-about`} class="soft">
        {about}
      </p>
    </div>
  );
}

function InTheWay({ bench, state }: { readonly bench: Bench; readonly state: PaneState }) {
  const names = state.inTheWay ?? [];
  return (
    <Ask
      askedBy="fill"
      title={`This workbook already has ${listed(names)}`}
      about={`${typedOverSentence(state.typedOver)}Inputs you changed by hand in the Takeoff and columns of your own are kept. Everything else of ours is written anew.`}
      yes="Write over"
      no="Leave as it is"
      onYes={() => fill(bench, names)}
      onNo={() => bench.store.send({ type: 'sheets in the way', names: null })}
    />
  );
}

const MOST_NAMED = 6;

/** What is lost of figures typed over, and how to set a price that stays. */
function typedOverSentence(figures: readonly string[]): string {
  if (figures.length === 0) return '';
  const more = figures.length - MOST_NAMED;
  const named = more > 0 ? `${figures.slice(0, MOST_NAMED).join(', ')} and ${more} more` : listed(figures);
  return `Figures you typed over their formulas are lost: ${named}. To set a price that stays, type it under Price agreed first. `;
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;
}

function Done({ bench, state, filled }: { readonly bench: Bench; readonly state: PaneState; readonly filled: Filled }) {
  const first = filled.toLookAt.slice(0, state.listed);
  return (
    <>
      <h1>The workbook is filled</h1>
      <dl class="sums">
        <div>
          <dt>Openings</dt>
          <dd>{filled.openings.toLocaleString()}</dd>
        </div>
        {filled.price !== null && (
          <div>
            <dt>Price{filled.priced < filled.openings && ` of ${filled.priced.toLocaleString()}`}</dt>
            <dd>{money(filled.price, bench.options.locale)}</dd>
          </div>
        )}
        {(filled.extras !== null || filled.extrasNotPriced > 0) && (
          <div>
            <dt>Extras{filled.extrasNotPriced > 0 && ` (${filled.extrasNotPriced.toLocaleString()} not priced)`}</dt>
            <dd>{filled.extras === null ? '–' : money(filled.extras, bench.options.locale)}</dd>
          </div>
        )}
        <div>
          <dt>To look at</dt>
          <dd>{filled.toLookAt.length.toLocaleString()}</dd>
        </div>
      </dl>
      <NotSet bench={bench} state={state} />
      {filled.repriced.length > 0 && <p class="card">{filled.repriced.join(' ')}</p>}
      {filled.said.length > 0 && (
        <details class="left-out">
          <summary>{count(filled.said.length, 'figure')} of yours came up again</summary>
          <ul class="facts">
            {filled.said.map((sentence, index) => (
              <li key={index}>{sentence}</li>
            ))}
          </ul>
        </details>
      )}
      <h2>The sheets</h2>
      <ul class="plain">
        {filled.sheets.map((sheet) => (
          <li key={sheet.name}>
            <button type="button" class="wide" onClick={() => show(bench, sheet.name, sheet.address)}>
              <strong>{sheet.name}</strong>
              <span class="soft">{sheet.about}</span>
            </button>
          </li>
        ))}
      </ul>
      {first.length > 0 && (
        <>
          <h2>To look at</h2>
          <ul class="plain">
            {first.map((one) => (
              <li key={one.address}>
                <button type="button" class="wide troubled" onClick={() => show(bench, 'Takeoff', one.address)}>
                  <strong>{one.mark || `No. ${one.no}`}</strong>
                  <span>{one.said}</span>
                </button>
              </li>
            ))}
          </ul>
          {first.length < filled.toLookAt.length && (
            <button type="button" class="quiet" onClick={() => bench.store.send({ type: 'more listed' })}>
              Show more: {(filled.toLookAt.length - first.length).toLocaleString()} not listed yet
            </button>
          )}
        </>
      )}
    </>
  );
}
