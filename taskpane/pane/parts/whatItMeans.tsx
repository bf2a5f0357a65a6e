import { useEffect, useRef, useState } from 'preact/hooks';
import type { Result } from '../../../src/result';
import type { Alone } from '../../../src/takeoff/alone';
import type { Takeoff } from '../../../src/takeoff/takeoff';
import type { Bench } from '../deeds/bench';
import { money } from '../format';

interface Props {
  readonly bench: Bench;
  readonly taken: Takeoff;
  /** Place of the opening, from 0. */
  readonly at: number;
}

/** On asking: what an opening would cost as the only one, and what the job saves without it. */
export function WhatItMeans({ bench, taken, at }: Props) {
  const [answer, setAnswer] = useState<Result<Alone> | 'asked' | null>(null);
  const stopper = useRef(new AbortController());
  useEffect(() => () => stopper.current.abort(), []);
  const ask = async () => {
    setAnswer('asked');
    const stock = await bench.host.readSheet('Stock');
    if (!stock.ok) return setAnswer(stock);
    const { heldFactors } = await import('../../../src/workbook/planBlock');
    const job = {
      held: heldFactors(stock.value),
      openings: taken.openings.map(({ opening }) => opening),
      cells: taken.openings.map(({ cells }) => cells),
      ...{ standards: taken.standards, at },
    };
    const { signal } = stopper.current;
    const found = await bench.core.alone(job, signal);
    if (!signal.aborted) setAnswer(found);
  };
  const { locale } = bench.options;
  if (answer === null || answer === 'asked')
    return (
      <div class="next">
        <button type="button" disabled={answer === 'asked'} onClick={() => void ask()}>
          {answer === 'asked' ? 'Planning the boards…' : 'What would it cost alone?'}
        </button>
      </div>
    );
  if (!answer.ok) return <p class="needs">{answer.message}</p>;
  const { price, saved } = answer.value;
  return (
    <p role="status">
      {price === null ? 'It has no price yet. ' : `Alone it would cost ${money(price, locale)}. `}
      Without it the job saves {money(saved, locale)}.
    </p>
  );
}
