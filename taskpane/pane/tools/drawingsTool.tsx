import { useEffect, useState } from 'preact/hooks';
import type { Scene } from '../../../src/drawing/scene';
import type { Setup } from '../../../src/takeoff/setups';
import type { Bench } from '../deeds/bench';
import { guideDrawing, listGuides, printDrawings, printGuides, saveAllGuides, saveGuides } from '../deeds/guideBoards';
import { drawBoards, writeTickets, type DrawnBoard } from '../deeds/plans';
import { count } from '../format';
import { Drawing } from '../parts/drawing';
import type { PaneState } from '../state';
import { SegmentsCard } from './segmentsCard';

/** What goes to the bench: tickets, boards as they are sawn, and the guide boards of each set-up, saved as files to cut or print from. */
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
      <Boards bench={bench} state={state} />
      <SegmentsCard bench={bench} state={state} />
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
            {bench.options.onPrint && (
              <>
                <button type="button" onClick={() => printGuides(bench, [setup])}>
                  Print this drawing
                </button>
                <button type="button" onClick={() => printGuides(bench, setups)}>
                  Print all {count(setups.length, 'pair')}
                </button>
              </>
            )}
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

/** The cutting plan of the filled workbook, board by board; what stands here is gone as soon as the plan is older than the rows. */
function Boards({ bench, state }: { readonly bench: Bench; readonly state: PaneState }) {
  const [boards, setBoards] = useState<readonly DrawnBoard[] | null>(null);
  const { older, renewing } = state.plans;
  useEffect(() => setBoards(null), [older, renewing]);
  return (
    <section class="card" aria-labelledby="boards-title">
      <h2 id="boards-title">Boards to saw</h2>
      <p>
        The boards of the sheet Stock as they lie under the saw: trims, lanes, every piece with its row turned or not,
        and what is left.
      </p>
      {boards === null ? (
        <button type="button" onClick={async () => setBoards((await drawBoards(bench)) ?? null)}>
          Draw the boards
        </button>
      ) : boards.length === 0 ? (
        <p>No opening needs a board yet.</p>
      ) : (
        boards.map(({ caption, scene }) => (
          <figure key={caption} class="sheet">
            <Drawing scene={scene} />
            <figcaption>
              {caption}. {scene.description}
            </figcaption>
          </figure>
        ))
      )}
      {boards !== null && boards.length > 0 && bench.options.onPrint && (
        <button type="button" onClick={() => printDrawings(bench, boards)}>
          Print the boards
        </button>
      )}
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
