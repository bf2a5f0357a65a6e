import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { ago, type Job, type JobState } from '../file/job';
import type { GridTools } from './gridTools';
import { TIGHT, type FrozenRows } from './frozenRows';
import { Menu, MenuItem } from './menu';

export interface Doings {
  readonly open: () => void;
  readonly print: () => void;
  readonly find: () => void;
  readonly example: () => void;
  readonly keys: () => void;
  readonly mayReplace: () => Promise<boolean>;
}

interface BarProps {
  readonly job: Job;
  readonly tools: GridTools;
  readonly frozen: FrozenRows;
  readonly doings: Doings;
}

/** The page's own bar: the job, its file, and what is done to cells. */
export function Bar({ job, tools, frozen, doings }: BarProps) {
  const state = useJob(job);
  const [whole, setWhole] = useState(frozen.shown);
  const [fonts, setFonts] = useState(false);
  const tight = useTight();
  return (
    <>
      <div class="wb-tools" role="toolbar" aria-label="Job and cells">
        <FileMenu job={job} state={state} doings={doings} />
        <button type="button" disabled={state.working !== null} onClick={() => void job.save()} title="Ctrl+S">
          Save
        </button>
        <button type="button" onClick={() => tools.undo()} title="Ctrl+Z">
          Undo
        </button>
        {!tight && (
          <button type="button" onClick={() => tools.redo()} title="Ctrl+Y">
            Redo
          </button>
        )}
        <button type="button" onClick={doings.find} title="Ctrl+F">
          Find
        </button>
        <SortMenu tools={tools} />
        {tight ? (
          <Menu label="More" onOpen={() => setWhole(frozen.shown)}>
            <MenuItem keys="Ctrl+Y" act={() => tools.redo()}>
              Redo
            </MenuItem>
            <MenuItem act={() => setFonts(!fonts)}>
              {fonts ? 'Put away numbers and letters' : 'Numbers, letters'}
            </MenuItem>
            <MenuItem act={() => frozen.toggle()}>
              {whole ? 'Put away the rows over the headings' : 'Show the rows over the headings'}
            </MenuItem>
            <MenuItem keys="?" act={doings.keys}>
              Keys
            </MenuItem>
            <MenuItem act={() => void open(HELP, '_blank', 'noopener')}>Help</MenuItem>
          </Menu>
        ) : (
          <>
            <NumberFormat tools={tools} />
            <button type="button" aria-expanded={fonts} aria-controls="wb-fonts" onClick={() => setFonts(!fonts)}>
              Letters
            </button>
            <button type="button" onClick={doings.keys} title="?">
              Keys
            </button>
            <a class="wb-help" href={HELP} target="_blank" rel="noopener">
              Help
            </a>
          </>
        )}
      </div>
      {fonts && <Fonts tools={tools}>{tight && <NumberFormat tools={tools} />}</Fonts>}
    </>
  );
}

const HELP = 'docs/guide.html';

function useTight(): boolean {
  const [query] = useState(() => matchMedia(TIGHT));
  const [tight, setTight] = useState(query.matches);
  useEffect(() => {
    const change = () => setTight(query.matches);
    query.addEventListener('change', change);
    return () => query.removeEventListener('change', change);
  }, [query]);
  return tight;
}

function useJob(job: Job): JobState {
  const [state, setState] = useState(job.get());
  useEffect(() => job.listen(() => setState(job.get())), [job]);
  return state;
}

/** The job's name, and whether all of it is in a file. */
export function JobName({ job }: { readonly job: Job }) {
  const state = useJob(job);
  const [typed, setTyped] = useState<string | null>(null);
  return (
    <>
      <label class="wb-hidden" for="wb-job">
        Name of the job
      </label>
      <input
        id="wb-job"
        type="text"
        spellcheck={false}
        value={typed ?? state.name}
        onInput={(event) => setTyped(event.currentTarget.value)}
        onBlur={() => {
          if (typed !== null) job.rename(typed);
          setTyped(null);
        }}
        onKeyDown={(event) => {
          if (event.key === 'Enter') event.currentTarget.blur();
          if (event.key === 'Escape') setTyped(null);
        }}
      />
      <span id="wb-changed" role="status">
        {state.working !== null ? `${state.working}…` : state.changed ? '• not saved' : ''}
      </span>
    </>
  );
}

/** Work that was left unsaved, offered at the next start. */
export function LeftWork({ job }: { readonly job: Job }) {
  const { left, working } = useJob(job);
  if (!left) return null;
  return (
    <section class="wb-offer" aria-label="Unsaved work">
      <p>
        <strong>{left.name}</strong> was not saved when this page was last left. It was kept {ago(left.at)}.
      </p>
      <button type="button" disabled={working !== null} onClick={() => void job.takeLeft(true)}>
        Bring it back
      </button>
      <button type="button" disabled={working !== null} onClick={() => void job.takeLeft(false)}>
        Forget it
      </button>
    </section>
  );
}

function FileMenu({ job, state, doings }: { readonly job: Job; readonly state: JobState; readonly doings: Doings }) {
  return (
    <Menu label="File">
      <MenuItem keys="Ctrl+O" act={doings.open}>
        Open…
      </MenuItem>
      <MenuItem keys="Ctrl+S" act={() => void job.save()}>
        Save
      </MenuItem>
      <MenuItem act={() => void job.save(true)}>Save a copy…</MenuItem>
      <MenuItem keys="Ctrl+P" act={doings.print}>
        Print…
      </MenuItem>
      <MenuItem act={() => void job.startNew(doings.mayReplace)}>New job</MenuItem>
      <MenuItem act={doings.example}>The example</MenuItem>
      {state.recent.length > 0 && <p class="wb-menu-title">Recent</p>}
      {state.recent.map((recent) => (
        <MenuItem key={recent.name} act={() => void job.openRecent(recent, doings.mayReplace)}>
          {recent.name} <span class="wb-soft">{ago(recent.at)}</span>
        </MenuItem>
      ))}
    </Menu>
  );
}

function SortMenu({ tools }: { readonly tools: GridTools }) {
  const [about, setAbout] = useState(tools.sortable());
  return (
    <Menu label="Sort" onOpen={() => setAbout(tools.sortable())}>
      {about.ok ? (
        <>
          <p class="wb-menu-title">
            {about.value.rows} rows by {about.value.heading}
          </p>
          <MenuItem act={() => tools.sort(false)}>Smallest or A first</MenuItem>
          <MenuItem act={() => tools.sort(true)}>Largest or Z first</MenuItem>
          <MenuItem act={() => tools.showOnly()}>Show only rows with {about.value.shown || 'a blank'}</MenuItem>
          <MenuItem act={() => tools.showAll()}>Show all rows</MenuItem>
        </>
      ) : (
        <p class="wb-menu-title">{about.message}</p>
      )}
    </Menu>
  );
}

const FORMATS: readonly (readonly [code: string, name: string])[] = [
  ['General', 'As typed'],
  ['0', '36'],
  ['0.000', '36.500'],
  ['# ??/??', '36 1/2'],
  ['#,##0.00', '1,234.50'],
  ['0.0%', '12.5%'],
  ['@', 'Text'],
];

function NumberFormat({ tools }: { readonly tools: GridTools }) {
  const select = useRef<HTMLSelectElement>(null);
  return (
    <>
      <label class="wb-hidden" for="wb-format">
        Number format of the selected cells
      </label>
      <select
        id="wb-format"
        ref={select}
        value=""
        onChange={(event) => {
          tools.format(event.currentTarget.value);
          event.currentTarget.value = '';
        }}
      >
        <option value="" disabled>
          Number
        </option>
        {FORMATS.map(([code, name]) => (
          <option key={code} value={code}>
            {name}
          </option>
        ))}
      </select>
    </>
  );
}

const GROUNDS: readonly (readonly [color: string, name: string])[] = [
  ['#FFF1C4', 'Yellow ground'],
  ['#E3F0E6', 'Green ground'],
  ['#FBE3DF', 'Red ground'],
  ['#E1EBF3', 'Blue ground'],
];

/** What any spreadsheet has for letters, in a row of its own. */
function Fonts({ tools, children }: { readonly tools: GridTools; readonly children: ComponentChildren }) {
  return (
    <div id="wb-fonts" class="wb-tools" role="toolbar" aria-label="Letters">
      {children}
      <button type="button" onClick={() => tools.look('bold')}>
        <b>Bold</b>
      </button>
      <button type="button" onClick={() => tools.look('italic')}>
        <i>Italic</i>
      </button>
      <button type="button" onClick={() => tools.look('underline')}>
        <u>Underline</u>
      </button>
      <button type="button" onClick={() => tools.look('left')}>
        Left
      </button>
      <button type="button" onClick={() => tools.look('center')}>
        Center
      </button>
      <button type="button" onClick={() => tools.look('right')}>
        Right
      </button>
      <button type="button" onClick={() => tools.look('wrap')}>
        Wrap
      </button>
      {GROUNDS.map(([color, name]) => (
        <button key={color} type="button" onClick={() => tools.ground(color)}>
          <span class="wb-swatch" style={{ background: color }} /> {name}
        </button>
      ))}
      <button type="button" onClick={() => tools.ground(null)}>
        No ground
      </button>
    </div>
  );
}
