import { useId, useState } from 'preact/hooks';
import { listSheets } from '../deeds/chooseList';
import type { Bench } from '../deeds/bench';

interface SheetChoiceProps {
  readonly bench: Bench;
  readonly names: readonly string[];
  readonly read: (name: string) => void;
}

/** A sheet of the workbook by name; the list is fresh each time it is gone to. */
export function SheetChoice({ bench, names, read }: SheetChoiceProps) {
  const id = useId();
  const [name, setName] = useState('');
  const chosen = names.includes(name) ? name : (names[0] ?? '');
  return (
    <div class="row">
      <label for={id}>Or a whole sheet</label>
      <div class="pair">
        <select
          id={id}
          value={chosen}
          disabled={names.length === 0}
          onFocus={() => listSheets(bench)}
          onChange={(event) => setName(event.currentTarget.value)}
        >
          {names.length === 0 && <option value="">No sheets found</option>}
          {names.map((one) => (
            <option key={one} value={one}>
              {one}
            </option>
          ))}
        </select>
        <button type="button" disabled={names.length === 0} onClick={() => read(chosen)}>
          Read it<span class="hidden">: the chosen sheet</span>
        </button>
      </div>
    </div>
  );
}
