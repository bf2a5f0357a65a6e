import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';

interface EntryProps {
  readonly id: string;
  /** Below its label, or beside it with a note. */
  readonly look?: 'field' | 'setting';
  readonly label: ComponentChildren;
  readonly held: string;
  /** Chosen from these instead of typed. */
  readonly choices?: readonly string[] | undefined;
  /** What the choice of none of them is called; without it, one has to be chosen. */
  readonly none?: string | undefined;
  /** Stands in where nothing is typed. */
  readonly hint?: string | undefined;
  readonly note?: string;
  /** Why the text was not taken. */
  readonly refused: string | null | undefined;
  readonly isCount?: boolean;
  /** Taken at each key, not only when it is left or at Enter. */
  readonly live?: boolean;
  /** Gives whether the text was taken. */
  readonly take: (text: string) => boolean | Promise<boolean>;
  /** Called when a typed text was taken with Enter. */
  readonly onTaken?: (() => void) | undefined;
}

/** One text, typed or chosen in place. What can't be taken stays as typed, and right below stands why. */
export function Entry({ id, look = 'field', label, held, choices, none, hint, note, refused, ...own }: EntryProps) {
  const { isCount = false, live = false, onTaken } = own;
  const [text, setText] = useState(held);
  // What it holds may change under the input: another input changed it, or the list was read again.
  useEffect(() => setText(held), [held]);
  const isRefused = refused !== null && refused !== undefined;
  const take = (typed: string) => (typed === held && !isRefused ? true : own.take(typed));
  const about = [note === undefined ? '' : `${id}-note`, isRefused ? `${id}-refused` : ''].join(' ').trim();
  const shared = { id, 'aria-invalid': isRefused, 'aria-describedby': about || undefined };
  return (
    <div class={look}>
      <label for={id}>{label}</label>
      {choices ? (
        <select {...shared} value={held} onChange={(event) => void take(event.currentTarget.value)}>
          {none !== undefined && <option value="">{none}</option>}
          {choices.map((choice) => (
            <option key={choice} value={choice}>
              {choice}
            </option>
          ))}
        </select>
      ) : (
        <input
          {...shared}
          type="text"
          inputMode={isCount ? 'numeric' : undefined}
          autocomplete="off"
          spellcheck={false}
          value={text}
          placeholder={hint}
          onInput={(event) => {
            setText(event.currentTarget.value);
            if (live) void take(event.currentTarget.value);
          }}
          onChange={(event) => void take(event.currentTarget.value)}
          onKeyDown={async (event) => {
            if (event.key !== 'Enter') return;
            event.preventDefault();
            if (await take(event.currentTarget.value)) onTaken?.();
          }}
        />
      )}
      {note !== undefined && (
        <p id={`${id}-note`} class="soft note">
          {note}
        </p>
      )}
      {isRefused && (
        <p id={`${id}-refused`} class="refused" role="alert">
          {refused}
        </p>
      )}
    </div>
  );
}
