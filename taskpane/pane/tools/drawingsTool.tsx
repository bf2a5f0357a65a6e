import { useEffect, useState } from 'preact/hooks';
import type { Scene } from '../../../src/drawing/scene';
import type { Setup } from '../../../src/takeoff/setups';
import type { Bench } from '../deeds/bench';
import { guideDrawing, listGuides, saveAllGuides, saveGuides } from '../deeds/guideBoards';
import { writeTickets } from '../deeds/plans';
import { count } from '../format';
import { Drawing } from '../parts/drawing';
import type { PaneState } from '../state';

/** What goes to the bench: tickets, and the guide boards of each set-up, looked at and saved as files to cut or print from. */
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
    <>
      <h1>Drawings</h1>
      <Tickets bench={bench} />
      <section class="card" aria-labelledby="drawings-title">
        <h2 id="drawings-title">Guide board drawings</h2>
        {!schedule ? (
          <p>Choose a list of openings first; then the drawings for each pair of guides can be saved here.</p>
        ) : setups === null ? (
          <button type="button" onClick={find}>
            List the pairs of guides
          </button>
        ) : !setup ? (
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
            <Preview bench={bench} setup={setup} />
            <button type="button" onClick={() => saveGuides(bench, setup)}>
              Save the drawings (DXF, SVG)
            </button>
            <button type="button" onClick={() => saveAllGuides(bench, setups)}>
              Save all {count(setups.length, 'pair')} in one .zip
            </button>
          </>
        )}
      </section>
    </>
  );
}

function Tickets({ bench }: { readonly bench: Bench }) {
  return (
    <section class="card" aria-labelledby="tickets-title">
      <h2 id="tickets-title">Tickets for the bench</h2>
      <p>
        By No.: what glue-up, saw, machine, trimming and packing need of every opening, and the boards to buy in a form
        to send to a yard. Written once, they follow the rows.
      </p>
      <button type="button" onClick={() => writeTickets(bench)}>
        Write the sheets Tickets and Purchase
      </button>
    </section>
  );
}

function Preview({ bench, setup }: { readonly bench: Bench; readonly setup: Setup }) {
  const [drawn, setDrawn] = useState<Scene | string | null>(null);
  useEffect(() => {
    let over = false;
    setDrawn(null);
    void guideDrawing(bench, setup).then((scene) => {
      if (!over) setDrawn(scene.ok ? scene.value : scene.message);
    });
    return () => {
      over = true;
    };
  }, [setup]);
  if (drawn === null) return null;
  return typeof drawn === 'string' ? <p>{drawn}</p> : <Drawing scene={drawn} />;
}
