import { useMemo, useState } from 'preact/hooks';
import { ENDS, HEAD_SHAPES } from '../../../src/head/head';
import { capital } from '../../../src/schedule/figure';
import { firstAsk, readAsk, type AskField, type OpeningAsk } from '../figure/ask';
import { hasOwnRise } from '../fix';
import { numbersApart, type FigureApart } from '../figure/apart';
import { putInCell, putOver, type Waiting } from '../deeds/putFigure';
import type { Bench } from '../deeds/bench';
import { fieldOf, standardText } from '../fields';
import { decimal, onTape } from '../format';
import { takeOne } from '../openingFigures';
import { Ask } from '../parts/ask';
import { Entry } from '../parts/entry';
import { OpeningDrawing } from '../parts/openingDrawing';
import type { Unit } from '../../../src/unit';
import type { PaneState } from '../state';

/** A calculator for one opening: every figure, how it comes about, and a way into the selected cell. */
export function FigureTool({ bench, state }: { readonly bench: Bench; readonly state: PaneState }) {
  const { standards } = state;
  const { locale } = bench.options;
  const [ask, setAsk] = useState<OpeningAsk>(() => firstAsk(standards));
  const [asFormula, setAsFormula] = useState(true);
  const [waiting, setWaiting] = useState<Waiting | null>(null);
  const { opening, refused } = useMemo(() => readAsk(ask, standards, locale), [ask, standards, locale]);
  const taken = useMemo(() => takeOne(opening, standards), [opening, standards]);
  const figures = Object.keys(refused).length === 0 && taken?.own ? numbersApart(taken, standards, locale) : [];
  const entry = (field: AskField) => ({
    id: `ask-${field}`,
    label: fieldOf(field).label,
    held: ask[field],
    refused: refused[field],
    live: true,
    take: (text: string) => {
      setAsk({ ...ask, [field]: text });
      return true;
    },
  });
  const put = async ({ figure, formula }: FigureApart) => {
    const inTheWay = await putInCell(bench, asFormula && formula !== null ? `=${formula}` : figure);
    setWaiting(inTheWay ?? null);
  };
  const needs = Object.keys(refused).length === 0 ? (taken?.needs ?? []) : [];
  return (
    <>
      <h1>Ask a figure</h1>
      <section class="card ask-form" aria-label="The opening">
        <div class="fields">
          <Entry {...entry('head')} choices={HEAD_SHAPES} />
          <Entry {...entry('span')} />
          {hasOwnRise(ask.head) && <Entry {...entry('rise')} />}
          <Entry {...entry('reveal')} hint={standardText('reveal', standards, locale)} />
          <Entry {...entry('face')} hint={standardText('face', standards, locale)} />
          <Entry {...entry('ends')} choices={ENDS} />
        </div>
      </section>
      {Object.keys(refused).length === 0 ? (
        <OpeningDrawing opening={opening} standards={standards} locale={locale} />
      ) : (
        <p class="soft">The drawing and the figures appear once the opening can be read.</p>
      )}
      {needs.map((need) => (
        <p key={need} class="needs">
          {need}
        </p>
      ))}
      {waiting && (
        <Ask
          title={`Cell ${waiting.address} of ${waiting.sheet} is not empty`}
          about={`It holds ${waiting.holds}`}
          yes="Write over it"
          no="Leave it"
          onYes={() => {
            setWaiting(null);
            void putOver(bench, waiting);
          }}
          onNo={() => setWaiting(null)}
        />
      )}
      {figures.length > 0 && (
        <section aria-labelledby="figures-title" class="figures">
          <h2 id="figures-title">Every figure</h2>
          <fieldset class="put-as">
            <legend>Put it in the selected cell as</legend>
            <label>
              <input type="radio" name="put-as" checked={asFormula} onChange={() => setAsFormula(true)} /> a formula
            </label>
            <label>
              <input type="radio" name="put-as" checked={!asFormula} onChange={() => setAsFormula(false)} /> a number
            </label>
          </fieldset>
          <ul class="figure-list">
            {figures.map((figure) => (
              <li key={figure.name}>
                <p class="figure-name">{figure.heading}</p>
                <p class="figure-value">
                  {measured(figure, standards.unit, locale)}
                  {figure.measure === 'length' && standards.unit === 'in' && (
                    <span class="soft exact">{decimal(Number(figure.figure), 4, locale)}</span>
                  )}
                </p>
                <p class="words soft">{figure.how || byAndFrom(figure)}</p>
                <button type="button" onClick={() => put(figure)}>
                  Put it in the cell<span class="hidden">: {figure.heading}</span>
                </button>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

/** A length as on a tape, its exact figure stands beside it; anything else as it is. */
function measured({ measure, figure, value }: FigureApart, unit: Unit, locale?: string): string {
  return measure === 'length' && typeof figure === 'number' ? onTape(figure, unit, locale) : value;
}

/** `Radius and reveal: radius 30″, reveal 1/4″.` */
function byAndFrom({ by, from }: FigureApart): string {
  const numbers = from.map(({ name, value }) => `${name} ${value}`).join(', ');
  return `${capital(by)}: ${numbers}.`;
}
