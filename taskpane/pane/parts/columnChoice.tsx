import type { ComponentChildren } from 'preact';

interface ColumnChoiceProps {
  readonly id: string;
  /** From 0. */
  readonly column: number;
  readonly heading: string;
  /** What the column holds, by the value of its option. */
  readonly value: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly choose: (value: string) => void;
  /** A few of its cells to judge by. */
  readonly samples: readonly string[];
  readonly children?: ComponentChildren;
}

/** A column of a list or quote: its heading, what it is taken for, and some of its cells. */
export function ColumnChoice({ id, column, heading, value, options, choose, samples, children }: ColumnChoiceProps) {
  return (
    <li class="column">
      <label for={id}>{heading.trim() === '' ? `Column ${column + 1}, no heading` : heading}</label>
      <select id={id} value={value} onChange={(event) => choose(event.currentTarget.value)}>
        {options.map((one) => (
          <option key={one.value} value={one.value}>
            {one.label}
          </option>
        ))}
      </select>
      <p class="samples">
        {samples.length === 0 ? (
          <span class="soft">empty</span>
        ) : (
          samples.map((sample, index) => <span key={index}>{sample}</span>)
        )}
      </p>
      {children}
    </li>
  );
}
