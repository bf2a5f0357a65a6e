import { markOrRow, type Opening, type OpeningField } from '../../../src/schedule/opening';
import type { Bench } from '../deeds/bench';
import { answerKey, fixOpening } from '../deeds/fixOpening';
import { fieldOf, fieldText, standardText } from '../fields';
import type { PaneState } from '../state';
import { Entry } from './entry';

interface FieldInputProps {
  readonly bench: Bench;
  readonly state: PaneState;
  readonly at: number;
  readonly opening: Opening;
  readonly field: OpeningField;
  /** Called when a typed figure was taken with Enter. */
  readonly onTaken?: () => void;
}

/** One figure of an opening of the list. */
export function FieldInput({ bench, state, at, opening, field, onTaken }: FieldInputProps) {
  const { label, kind, choices } = fieldOf(field);
  const { locale } = bench.options;
  const held = fieldText(opening, field, state.standards, locale);
  const standard = standardText(field, state.standards, locale);
  const key = answerKey(opening, field);
  const take = (typed: string) => {
    if (typed !== held) return fixOpening(bench, at, field, typed);
    bench.store.send({ type: 'answer refused', key, message: null });
    return true;
  };
  return (
    <Entry
      id={`${field}-${at}`}
      label={
        <>
          {label}
          <span class="hidden"> of {markOrRow(opening)}</span>
        </>
      }
      held={held}
      choices={choices}
      none={standard || 'choose…'}
      hint={standard}
      refused={state.refused[key]}
      isCount={kind === 'count'}
      take={take}
      onTaken={onTaken}
    />
  );
}
