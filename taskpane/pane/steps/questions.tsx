import { useState } from 'preact/hooks';
import type { OpeningField, Question } from '../../../src/schedule/opening';
import type { Bench } from '../deeds/bench';
import { answer, answersTo } from '../deeds/fixOpening';
import { fieldOf } from '../fields';
import { count, withPoint } from '../format';
import { Entry } from '../parts/entry';
import { focusFollowing } from '../parts/following';
import type { ListRead, PaneState } from '../state';

/** More answers than these are chosen from a list. */
const MOST_BUTTONS = 5;
const MOST_ROWS = 8;
const TITLES: Readonly<Record<string, string>> = {
  units: 'What the figures are in',
  heads: 'Heads',
  columns: 'A column',
  marks: 'A mark',
  rows: 'A row',
  page: 'On the page',
  figures: 'How figures are written',
  'struck through': 'Struck through',
};

export interface QuestionsAbove {
  readonly remarks: readonly Question[];
  readonly others: readonly Question[];
}

/** What is asked about the list as a whole, or about several rows at once; what concerns one row stands with that row. */
export function questionsAbove(schedule: ListRead | null): QuestionsAbove {
  const questions = schedule?.questions ?? [];
  const ofList = (one: Question) => one.field === undefined;
  return {
    remarks: questions.filter((one) => ofList(one) && one.about === 'remarks'),
    others: questions.filter(
      (one) => one.about !== 'remarks' && (one.rows.length > 1 || (ofList(one) && one.about in TITLES)),
    ),
  };
}

interface QuestionsProps {
  readonly bench: Bench;
  readonly state: PaneState;
}

/** The questions of the list on one page: what is answered here settles every row it concerns. */
export function Questions({ bench, state, remarks, others }: QuestionsProps & QuestionsAbove) {
  const given = Object.entries(state.answers);
  if (remarks.length + others.length + given.length === 0) return null;
  return (
    <section aria-labelledby="questions-title">
      <h2 id="questions-title">About the list</h2>
      {others.map((one) => (
        <QuestionCard key={one.id} bench={bench} state={state} question={one} />
      ))}
      {remarks.length > 0 && <Remarks bench={bench} questions={remarks} />}
      {given.length > 0 && (
        <details class="left-out">
          <summary>{count(given.length, 'answer')} given</summary>
          <ul class="facts answered">
            {given.map(([key, { text, about }]) => (
              <li key={key}>
                {about} <strong>{text === '' ? 'left blank' : text}</strong>
                <button type="button" class="quiet" onClick={() => void answer(bench, { [key]: null })}>
                  Take back<span class="hidden"> the answer to: {about}</span>
                </button>
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

interface CardProps extends QuestionsProps {
  readonly question: Question;
}

function QuestionCard({ bench, state, question }: CardProps) {
  const { id, about, field, text, lead, rows, choices, examples } = question;
  const title = TITLES[about] ?? fieldOf(about as OpeningField).label;
  const take = (choice: string, focused: Element | null) => {
    const near = focused?.closest('[data-asks]') ?? null;
    void focusFollowing(near, () => answer(bench, answersTo(id, choice, lead ?? text)));
  };
  return (
    <section class="card question" data-asks={id} aria-label={`${title}: ${lead ?? text}`}>
      <h3>{title}</h3>
      <p>{lead ?? text}</p>
      <p class="soft">{rowsText(rows)}</p>
      {choices.length === 0 && field !== undefined ? (
        <JointEntry bench={bench} state={state} question={question} field={field} />
      ) : (
        <Choices choices={choices} examples={examples} take={take} />
      )}
      {field === undefined && rows.length > 1 && rows.length <= 50 && choices.length > 0 && about !== 'units' && (
        <details class="left-out">
          <summary>Row by row</summary>
          <ul class="plain">
            {rows.map((row) => (
              <li key={row} class="by-row">
                <span>Row {row}</span>
                <Choices
                  choices={choices}
                  of={`row ${row}`}
                  take={(choice) =>
                    void answer(bench, { [`${id}@${row}`]: { text: choice, about: `${lead ?? text} Row ${row}:` } })
                  }
                />
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

interface ChoicesProps {
  readonly choices: readonly string[];
  readonly examples?: readonly string[] | undefined;
  /** What the answers are for, where nothing about them says so. */
  readonly of?: string;
  readonly take: (choice: string, focused: Element | null) => void;
}

/** The answers that a question offers, one press each; many are chosen from a list. */
export function Choices({ choices, examples, of, take }: ChoicesProps) {
  const [chosen, setChosen] = useState(choices[0] ?? '');
  if (choices.length > MOST_BUTTONS)
    return (
      <div class="pair">
        <select
          aria-label={of === undefined ? 'Answer' : `Answer for ${of}`}
          value={chosen}
          onChange={(event) => setChosen(event.currentTarget.value)}
        >
          {choices.map((choice) => (
            <option key={choice} value={choice}>
              {choice}
            </option>
          ))}
        </select>
        <button type="button" onClick={(event) => take(chosen, event.currentTarget)}>
          Answer
        </button>
      </div>
    );
  return (
    <div class={examples === undefined ? 'answers' : 'answers tall'}>
      {choices.map((choice, index) => (
        <button key={choice} type="button" onClick={(event) => take(choice, event.currentTarget)}>
          <span>
            {choice}
            {of !== undefined && <span class="hidden"> for {of}</span>}
          </span>
          {examples?.[index] && <span class="soft">{examples[index]}</span>}
        </button>
      ))}
    </div>
  );
}

/** One figure for all rows of a question. */
function JointEntry({ bench, state, question, field }: CardProps & { readonly field: OpeningField }) {
  const { id, text, rows } = question;
  const { label, choices } = fieldOf(field);
  const key = `joint:${id}`;
  const take = async (typed: string) => {
    if (typed === '') return true;
    const { core, store, options } = bench;
    const { standards, schedule } = store.get();
    const read = await core.typed(
      schedule?.openings ?? [],
      -1,
      field,
      withPoint(typed, options.locale),
      standards.unit,
    );
    if (!read.ok) {
      store.send({ type: 'answer refused', key, message: read.message });
      return false;
    }
    store.send({ type: 'answer refused', key, message: null });
    const near = document.getElementById(key)?.closest('[data-asks]') ?? null;
    return focusFollowing(near, () => answer(bench, answersTo(id, read.value, text)));
  };
  return (
    <div class="fields">
      <Entry
        id={key}
        label={`${label} of all ${rows.length}`}
        held=""
        choices={choices}
        none="choose…"
        refused={state.refused[key]}
        take={take}
      />
    </div>
  );
}

/** Remarks that may change what is bought, each with what it may mean: confirmed in one go. */
function Remarks({ bench, questions }: { readonly bench: Bench; readonly questions: readonly Question[] }) {
  const [changed, setChanged] = useState<Readonly<Record<string, string>>>({});
  const chosenFor = (one: Question) => changed[one.id] ?? one.choices[0] ?? '';
  const takeAll = (focused: Element | null) => {
    const near = focused?.closest('[data-asks]') ?? null;
    const given = questions.map((one) => answersTo(one.id, chosenFor(one), one.text));
    void focusFollowing(near, () => answer(bench, Object.assign({}, ...given)));
  };
  return (
    <section class="card question" data-asks="remarks" aria-labelledby="remarks-title">
      <h3 id="remarks-title">{count(questions.length, 'remark')} that may change what is bought</h3>
      <ul class="plain remarks">
        {questions.map((one, index) => (
          <li key={one.id}>
            <label for={`remark-${index}`}>{one.text}</label>
            <span class="soft">{rowsText(one.rows)}</span>
            <select
              id={`remark-${index}`}
              value={chosenFor(one)}
              onChange={(event) => setChanged({ ...changed, [one.id]: event.currentTarget.value })}
            >
              {one.choices.map((choice) => (
                <option key={choice} value={choice}>
                  {choice}
                </option>
              ))}
            </select>
          </li>
        ))}
      </ul>
      <button type="button" class="main" onClick={(event) => takeAll(event.currentTarget)}>
        {questions.length === 1 ? 'Take this answer' : `Take these ${questions.length} answers`}
      </button>
    </section>
  );
}

/** "Row 7", "Rows 7, 9 and 12 more". */
function rowsText(rows: readonly number[]): string {
  const more = rows.length - MOST_ROWS;
  return `${rows.length === 1 ? 'Row' : 'Rows'} ${rows.slice(0, MOST_ROWS).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}
