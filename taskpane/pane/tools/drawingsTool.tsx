import { useEffect, useState } from 'preact/hooks';
import type { Setup } from '../../../src/takeoff/setups';
import type { Bench } from '../deeds/bench';
import { listGuides, saveGuides } from '../deeds/guideBoards';
import type { PaneState } from '../state';

/** The guide boards of each set-up, as files to cut or print from. */
export function DrawingsTool({ bench, state }: { readonly bench: Bench; readonly state: PaneState }) {
  const [chosen, setChosen] = useState(0);
  const [setups, setSetups] = useState<readonly Setup[] | null>(null);
  const { schedule, standards } = state;
  // Worked out only when asked for: a long list takes a moment.
  useEffect(() => setSetups(null), [schedule, standards]);
  const find = async () => {
    setSetups((await listGuides(bench)) ?? null);
    setChosen(0);
  };
  const setup = setups?.[chosen];
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
              {setups.map((one, index) => (
                <option key={one.name} value={index}>
                  {one.name} · {[...new Set(one.pieces.map((piece) => piece.mark))].join(', ')}
                </option>
              ))}
            </select>
          </div>
          <button type="button" onClick={() => setup && saveGuides(bench, setup)}>
            Save the drawings (DXF, SVG)
          </button>
        </>
      )}
    </section>
  );
}
