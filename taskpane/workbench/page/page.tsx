import { render } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';
import type { DrawingPage } from '../../pane/deeds/bench';
import type { Store } from '../../pane/store';
import type { Engine } from '../engine';
import type { Job } from '../file/job';
import type { WorkbenchHost } from '../workbenchHost';
import { Bar, JobName, LeftWork, type Doings } from './bar';
import { Asking, KeysList, type Question, type Questions } from './dialogs';
import { FindBar, focusFind } from './findBar';
import { FrozenRows } from './frozenRows';
import { GridTools } from './gridTools';
import { watchKeys } from './keys';
import { PlanStrip, type PlanNews } from './planStrip';
import { PrintDrawings } from './printDrawings';
import { PrintView } from './printView';

const FILES = '.xlsx,.csv,.tsv,.txt';

interface PageOptions {
  readonly engine: Engine;
  readonly host: WorkbenchHost;
  readonly job: Job;
  readonly questions: Questions;
  readonly plans: Store<PlanNews, PlanNews>;
  /** Escape in the sheet: what stands over its cells goes. */
  readonly closed: () => void;
  readonly say: (sentence: string) => void;
  readonly example: () => Promise<{ readonly name: string; readonly bytes: Uint8Array }>;
}

type Over = 'find' | 'keys' | 'print' | readonly DrawingPage[] | null;

/**
 * The page around the grid: bar, title, what lies over it, keys, and files dropped anywhere. Gives the way to look at drawings
 * as pages and to print them.
 */
export function mountPage(options: PageOptions): (drawings: readonly DrawingPage[]) => void {
  const { engine, host, job, say, example, questions, plans, closed } = options;
  const tools = new GridTools(engine, say);
  let show: (over: Over) => void = () => undefined;
  const mayReplace = async () => {
    if (!job.get().changed) return true;
    const choice = await questions.ask({
      title: `${job.get().name} has changes that are not saved`,
      about: 'Another workbook takes its place.',
      choices: [
        ['save', 'Save it first'],
        ['leave', 'Go on without saving'],
        ['stay', 'Stay here'],
      ],
    });
    return choice === 'leave' || (choice === 'save' && (await waited(() => job.save())));
  };
  const openFile = async (file: File) => job.open(file.name, new Uint8Array(await file.arrayBuffer()), mayReplace);
  const doings: Doings = {
    open: () => pick(openFile),
    print: () => show('print'),
    // Open already, with the focus in the sheet: the key goes back to its field.
    find: () => {
      if (!focusFind()) show('find');
    },
    keys: () => show('keys'),
    example: () =>
      void example().then(
        ({ name, bytes }) => job.open(name, bytes, mayReplace),
        (thrown: unknown) => say(`The example could not be opened: ${String(thrown)}.`),
      ),
    mayReplace,
  };
  const Overlay = () => {
    const [over, setOver] = useState<Over>(null);
    const [asked, setAsked] = useState<{ question: Question; answer: (choice: string) => void } | null>(null);
    useLayoutEffect(() => {
      show = setOver;
      questions.onAsked((question, answer) => setAsked({ question, answer }));
    }, []);
    const close = () => {
      setOver(null);
      focusGrid();
    };
    return (
      <>
        <LeftWork job={job} />
        <PlanStrip news={plans} />
        {over === 'find' && <FindBar engine={engine} host={host} close={close} />}
        {over === 'keys' && <KeysList close={() => setOver(null)} />}
        {over === 'print' && <PrintView engine={engine} close={() => setOver(null)} />}
        {over !== null && typeof over === 'object' && <PrintDrawings pages={over} close={() => setOver(null)} />}
        {asked && (
          <Asking
            question={asked.question}
            answer={(choice) => {
              setAsked(null);
              asked.answer(choice);
            }}
          />
        )}
      </>
    );
  };
  const frozen = new FrozenRows(engine);
  render(<Bar job={job} tools={tools} frozen={frozen} doings={doings} />, document.getElementById('wb-bar')!);
  render(<JobName job={job} />, document.getElementById('wb-name')!);
  render(<Overlay />, document.getElementById('wb-over')!);
  watchKeys(engine, host, document.getElementById('grid')!, { ...doings, save: () => void job.save(), escape: closed });
  watchDrops((file) => void openFile(file));
  return (drawings) => show(drawings);
}

function focusGrid(): void {
  document.querySelector<HTMLElement>('#grid [contenteditable="true"]')?.focus();
}

/** Another deed may still be under way. */
async function waited(deed: () => Promise<boolean>): Promise<boolean> {
  await new Promise((resume) => setTimeout(resume));
  return deed();
}

function pick(take: (file: File) => Promise<void>): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = FILES;
  input.id = 'wb-open';
  input.addEventListener('change', () => {
    const file = input.files?.[0];
    if (file) void take(file);
  });
  input.click();
}

/** A file dropped anywhere but on the pane's own place for lists. */
function watchDrops(take: (file: File) => void): void {
  const ours = (event: DragEvent) =>
    !event.defaultPrevented &&
    (event.dataTransfer?.types.includes('Files') ?? false) &&
    !(event.target as Element).closest('.drop');
  addEventListener('dragover', (event) => {
    if (!ours(event)) return;
    event.preventDefault();
    document.body.classList.add('wb-dropping');
  });
  addEventListener('dragleave', (event) => {
    if (event.relatedTarget === null) document.body.classList.remove('wb-dropping');
  });
  addEventListener('drop', (event) => {
    document.body.classList.remove('wb-dropping');
    if (!ours(event)) return;
    event.preventDefault();
    const file = event.dataTransfer?.files[0];
    if (file) take(file);
  });
}
