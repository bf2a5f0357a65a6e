import { useEffect, useState } from 'preact/hooks';
import type { Setup } from '../../../src/takeoff/setups';
import type { Bench } from '../deeds/bench';
import { fail } from '../deeds/bench';
import { download } from '../deeds/shop';
import type { PaneState } from '../state';

const TYPES: Readonly<Record<string, string>> = { dxf: 'image/vnd.dxf', svg: 'image/svg+xml', csv: 'text/csv' };

/** The guide boards of each set-up, as files to cut or print from. */
export function DrawingsTool({ bench, state }: { readonly bench: Bench; readonly state: PaneState }) {
  const [chosen, setChosen] = useState(0);
  const [setups, setSetups] = useState<readonly Setup[] | null>(null);
  const { schedule, standards } = state;
  // Worked out only when asked for: a long list takes a moment.
  useEffect(() => setSetups(null), [schedule, standards]);
  const find = async () => {
    if (!schedule) return;
    const [{ takeoff }, { planSetups }] = await Promise.all([
      import('../../../src/takeoff/takeoff'),
      import('../../../src/takeoff/setups'),
    ]);
    setSetups(planSetups(takeoff(schedule.openings, standards)).setups.filter((one) => one.insideRadius !== null));
    setChosen(0);
  };
  const save = async () => {
    const setup = setups?.[chosen];
    if (!setup) return;
    const { guideBoardsOf, templateFiles } = await import('../../../src/drawing/template');
    const boards = guideBoardsOf(setup, standards);
    const files = boards.ok ? templateFiles(boards.value, setup.name) : boards;
    if (!files.ok) return fail(bench, files.message);
    for (const { name, content } of files.value) {
      download(name, content, TYPES[name.split('.').pop() ?? ''] ?? 'text/plain');
    }
  };
  return (
    <section class="card" aria-labelledby="drawings-title">
      <h2 id="drawings-title">Guide board drawings</h2>
      {!schedule ? (
        <p>Choose a list of openings first; then the drawings for each pair of guides can be saved here.</p>
      ) : setups === null ? (
        <button type="button" onClick={find}>
          List the pairs of guides
        </button>
      ) : setups.length === 0 ? (
        <p>No opening of the list runs between guides yet.</p>
      ) : (
        <>
          <div class="field wide-field">
            <label for="setup">Pair of guides</label>
            <select id="setup" value={chosen} onChange={(event) => setChosen(Number(event.currentTarget.value))}>
              {setups.map((setup, index) => (
                <option key={setup.name} value={index}>
                  {setup.name} · {[...new Set(setup.pieces.map((piece) => piece.mark))].join(', ')}
                </option>
              ))}
            </select>
          </div>
          <button type="button" onClick={save}>
            Save the drawings (DXF, SVG)
          </button>
        </>
      )}
    </section>
  );
}
