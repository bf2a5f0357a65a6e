import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { stop, type Bench } from './deeds/bench';
import { helpAddress } from './help';
import { HelpLink } from './parts/helpLink';
import { PlanBar } from './parts/planBar';
import { NoticeBar, WorkBar } from './parts/notice';
import { ShownFiles } from './parts/shownFiles';
import { StepArch } from './parts/stepArch';
import type { PaneState, Place } from './state';
import { FillStep } from './steps/fillStep';
import { HeadingsStep } from './steps/headingsStep';
import { ListStep } from './steps/listStep';
import { OpeningsStep } from './steps/openingsStep';
import { CellTool } from './tools/cellTool';
import { DrawingsTool } from './tools/drawingsTool';
import { FigureTool } from './tools/figureTool';
import { JobTool } from './tools/jobTool';
import { QuoteTool } from './tools/quoteTool';
import { ShopTool } from './tools/shopTool';

const PLACE_NAMES: readonly (readonly [Place, string])[] = [
  ['takeoff', 'Takeoff'],
  ['figure', 'Figure'],
  ['cell', 'Cell'],
  ['quote', 'Quote'],
  ['drawings', 'Drawings'],
  ['job', 'Job'],
  ['shop', 'Shop'],
];

/** The whole pane: where the user is decides what is shown; everything else is in the state. */
export function Pane({ bench }: { readonly bench: Bench }) {
  const state = useStore(bench);
  const page = useRef<HTMLDivElement>(null);
  const where = `${state.place} ${state.step} ${state.filled !== null} ${state.tables.length > 1} ${state.pdf !== null}`;
  const first = useRef(true);
  useLayoutEffect(() => {
    const heading = page.current?.querySelector('h1');
    if (!heading) return;
    heading.tabIndex = -1;
    // On a new page the heading takes the focus, so that the keyboard and a reader start there. Not on opening.
    if (!first.current) heading.focus();
    first.current = false;
  }, [where]);
  const go = (step: PaneState['step']) => bench.store.send({ type: 'stepped', step });
  return (
    <>
      <nav class="places" aria-label="Archwright">
        {PLACE_NAMES.map(([place, name]) => (
          <button
            key={place}
            type="button"
            aria-current={state.place === place ? 'page' : undefined}
            onClick={() => bench.store.send({ type: 'went', place })}
          >
            {name}
          </button>
        ))}
      </nav>
      {state.place === 'takeoff' && <StepArch state={state} go={go} />}
      <WorkBar work={state.work} stop={stop} />
      <NoticeBar notice={state.notice} dismiss={() => bench.store.send({ type: 'told', notice: null })} />
      <PlanBar bench={bench} plans={state.plans} />
      <div class="page" ref={page} aria-busy={state.work !== null}>
        {state.shownFiles.length > 0 && (
          <ShownFiles files={state.shownFiles} close={() => bench.store.send({ type: 'files shown', files: [] })} />
        )}
        <Page bench={bench} state={state} />
        <HelpLink to={helpAddress(state)}>Help with this page</HelpLink>
      </div>
    </>
  );
}

function Page({ bench, state }: { readonly bench: Bench; readonly state: PaneState }) {
  if (state.place === 'figure') return <FigureTool bench={bench} state={state} />;
  if (state.place === 'cell') return <CellTool bench={bench} state={state} />;
  if (state.place === 'quote') return <QuoteTool bench={bench} state={state} />;
  if (state.place === 'job') return <JobTool bench={bench} state={state} />;
  if (state.place === 'drawings') return <DrawingsTool bench={bench} state={state} />;
  if (state.place === 'shop') return <ShopTool bench={bench} state={state} />;
  switch (state.step) {
    case 'list':
      return <ListStep bench={bench} state={state} />;
    case 'headings':
      return <HeadingsStep bench={bench} state={state} />;
    case 'openings':
      return <OpeningsStep bench={bench} state={state} />;
    case 'fill':
      return <FillStep bench={bench} state={state} />;
  }
}

function useStore({ store }: Bench): PaneState {
  const [state, setState] = useState(store.get());
  useEffect(() => {
    setState(store.get());
    return store.listen(() => setState(store.get()));
  }, [store]);
  return state;
}
