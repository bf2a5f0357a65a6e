import { useEffect, useState } from 'preact/hooks';

interface LinesEntryProps {
  readonly id: string;
  readonly label: string;
  readonly held: string;
  readonly note?: string;
  /** Why the text was not taken. */
  readonly refused: string | null;
  /** Gives whether the text was taken. */
  readonly take: (text: string) => Promise<boolean>;
}

/** Text of several lines, taken when it is left. What can't be taken stays as typed, and right below stands why. */
export function LinesEntry({ id, label, held, note, refused, take }: LinesEntryProps) {
  const [text, setText] = useState(held);
  useEffect(() => setText(held), [held]);
  const about = [note === undefined ? '' : `${id}-note`, refused === null ? '' : `${id}-refused`].join(' ').trim();
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <textarea
        id={id}
        rows={3}
        value={text}
        aria-invalid={refused !== null}
        aria-describedby={about || undefined}
        onInput={(event) => setText(event.currentTarget.value)}
        onChange={(event) => void take(event.currentTarget.value)}
      />
      {note !== undefined && (
        <p id={`${id}-note`} class="soft note">
          {note}
        </p>
      )}
      {refused !== null && (
        <p id={`${id}-refused`} class="refused" role="alert">
          {refused}
        </p>
      )}
    </div>
  );
}
