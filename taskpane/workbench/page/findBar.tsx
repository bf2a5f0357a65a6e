import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { addressOf } from '../../../src/workbook/address';
import { cellData, cellFormula, plainValue, usedSize, type Engine } from '../engine';
import type { WorkbenchHost } from '../workbenchHost';

interface Place {
  readonly sheet: string;
  readonly address: string;
}

/** Every cell that shows the text, or has it in its formula; the active sheet first. Letter case is forgiven. */
function found(engine: Engine, text: string): Place[] {
  const wanted = text.toLowerCase();
  const active = engine.workbook.getActiveSheet();
  const sheets = engine.workbook.getSheets().filter((sheet) => sheet.getConfig().hidden !== 1);
  const places: Place[] = [];
  for (const sheet of [...sheets].sort((one, other) => Number(other === active) - Number(one === active))) {
    const size = usedSize(engine, sheet);
    for (let row = 0; row < size.rows; row++) {
      for (let column = 0; column < size.columns; column++) {
        const cell = cellData(engine, sheet, row, column);
        if (cell === null) continue;
        const value = plainValue(engine.library, cell);
        const shown = value === null ? '' : String(value).toLowerCase();
        if (!shown.includes(wanted) && !cellFormula(engine, sheet, row, column).toLowerCase().includes(wanted))
          continue;
        places.push({ sheet: sheet.getName(), address: addressOf({ row, column }) });
      }
    }
  }
  return places;
}

const FIELD = 'wb-find-text';

/** Puts the focus into the field, its text selected; false where finding is not open. */
export function focusFind(): boolean {
  const field = document.getElementById(FIELD) as HTMLInputElement | null;
  field?.focus();
  field?.select();
  return field !== null;
}

interface FindProps {
  readonly engine: Engine;
  readonly host: WorkbenchHost;
  readonly close: () => void;
}

/** Finds a text in all sheets. Enter goes on to the next cell, Shift+Enter back, Escape closes. */
export function FindBar({ engine, host, close }: FindProps) {
  const [text, setText] = useState('');
  const [said, setSaid] = useState('');
  const search = useRef<{ text: string; places: Place[]; at: number }>({ text: '', places: [], at: -1 });
  // At once: what is typed right after the key belongs here.
  useLayoutEffect(() => void focusFind(), []);
  const go = (by: number) => {
    if (text.trim() === '') return setSaid('Type what to find.');
    const last = search.current;
    if (last.text !== text) search.current = { text, places: found(engine, text), at: by > 0 ? -1 : 0 };
    const { places, at } = search.current;
    const place = places[(at + by + places.length) % places.length];
    if (!place) return setSaid(`No cell has ${text}.`);
    search.current.at = (at + by + places.length) % places.length;
    setSaid(`${search.current.at + 1} of ${places.length}: ${place.sheet} ${place.address}`);
    void host.show(place.sheet, place.address);
  };
  return (
    <form
      class="wb-find"
      role="search"
      onSubmit={(event) => {
        event.preventDefault();
        go(1);
      }}
      onKeyDown={(event) => {
        if (event.key === 'Escape') close();
        else if (event.key === 'Enter' && event.shiftKey) {
          event.preventDefault();
          go(-1);
        }
      }}
    >
      <label for={FIELD}>Find in all sheets</label>
      <input
        id={FIELD}
        type="search"
        placeholder="in all sheets"
        value={text}
        onInput={(event) => setText(event.currentTarget.value)}
      />
      <button type="submit">Next</button>
      <button type="button" onClick={() => go(-1)}>
        Back
      </button>
      <button type="button" onClick={close}>
        Close
      </button>
      <span role="status">{said}</span>
    </form>
  );
}
