import { useEffect, useState } from 'preact/hooks';
import type { Opening, OpeningField } from '../../../src/schedule/opening';
import { fixOpening } from '../deeds/fixOpening';
import type { Bench } from '../deeds/bench';
import { fieldOf, fieldText, standardText } from '../fields';
import type { PaneState } from '../state';

interface FieldInputProps {
  readonly bench: Bench;
  readonly state: PaneState;
  readonly at: number;
  readonly opening: Opening;
  readonly field: OpeningField;
  /** Called when a typed figure was taken with Enter. */
  readonly onTaken?: () => void;
}

/** One figure of an opening, typed or chosen in place. A figure that can't be taken says why, right below. */
export function FieldInput({ bench, state, at, opening, field, onTaken }: FieldInputProps) {
  const { label, kind, choices } = fieldOf(field);
  const held = fieldText(opening, field, state.standards, bench.options.locale);
  const [text, setText] = useState(held);
  // The opening may change under the input: another field fixed it, or the list was read again.
  useEffect(() => setText(held), [held]);
  const id = `${field}-${at}`;
  const refused = state.refused[at]?.[field];
  const take = async (typed: string): Promise<boolean> => (typed === held ? true : fixOpening(bench, at, field, typed));
  const shared = {
    id,
    'aria-invalid': refused !== undefined,
    'aria-describedby': refused === undefined ? undefined : `${id}-refused`,
  };
  return (
    <div class="field">
      <label for={id}>
        {label}
        <span class="hidden"> of {opening.mark || `row ${opening.row}`}</span>
      </label>
      {kind === 'choice' ? (
        <select {...shared} value={held} onChange={(event) => take(event.currentTarget.value)}>
          <option value="">{standardText(field, state.standards) || 'choose…'}</option>
          {choices?.map((choice) => (
            <option key={choice} value={choice}>
              {choice}
            </option>
          ))}
        </select>
      ) : (
        <input
          {...shared}
          type="text"
          inputMode={kind === 'count' ? 'numeric' : undefined}
          autocomplete="off"
          spellcheck={false}
          value={text}
          placeholder={standardText(field, state.standards, bench.options.locale)}
          onInput={(event) => setText(event.currentTarget.value)}
          onChange={(event) => void take(event.currentTarget.value)}
          onKeyDown={async (event) => {
            if (event.key !== 'Enter') return;
            event.preventDefault();
            if (await take(event.currentTarget.value)) onTaken?.();
          }}
        />
      )}
      {refused !== undefined && (
        <p class="refused" id={`${id}-refused`} role="alert">
          {refused}
        </p>
      )}
    </div>
  );
}
