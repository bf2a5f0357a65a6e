import { useEffect, useState } from 'preact/hooks';
import { JOB_FIELDS, JOB_GROUPS, type JobField, type JobKey } from '../../../src/job/fields';
import { jobFieldText } from '../../../src/job/readField';
import { ok } from '../../../src/result';
import type { Bench } from '../deeds/bench';
import { loadJob, loadJobFile, saveJobFile, saveProposalAlone, setJobField, writeProposal } from '../deeds/job';
import { Ask } from '../parts/ask';
import { Entry } from '../parts/entry';
import { FilePick } from '../parts/filePick';
import { LinesEntry } from '../parts/linesEntry';
import type { PaneState } from '../state';
import { RevisionTool } from './revisionTool';

/** The job: who it is for, the proposal that goes out, and the revised list that comes back. */
export function JobTool({ bench, state }: { readonly bench: Bench; readonly state: PaneState }) {
  useEffect(() => void loadJob(bench), [bench]);
  return (
    <>
      <h1>Job</h1>
      <section class="card" aria-labelledby="job-title">
        <h2 id="job-title">The job at hand</h2>
        <p>What is left blank takes no room on paper. It is kept with the workbook, on its Standards sheet.</p>
        {JOB_GROUPS.map((group) => (
          <details key={group} class="settings">
            <summary>{group}</summary>
            <div class="setting-list">
              {(JOB_FIELDS as readonly JobField[])
                .filter((field) => field.group === group)
                .map((field) => (
                  <FieldInput key={field.key} bench={bench} state={state} field={field} />
                ))}
            </div>
          </details>
        ))}
        <div class="pair">
          <button type="button" onClick={() => saveJobFile(bench)}>
            Save as a file
          </button>
          <FilePick label="Use a saved file" accept=".json" take={(file) => void loadJobFile(bench, file)} />
        </div>
      </section>
      <Proposal bench={bench} />
      <RevisionTool bench={bench} state={state} />
    </>
  );
}

interface FieldProps {
  readonly bench: Bench;
  readonly state: PaneState;
  readonly field: JobField;
}

function FieldInput({ bench, state, field }: FieldProps) {
  const [refused, setRefused] = useState<string | null>(null);
  const held = heldText(field, jobFieldText(state.job[field.key as JobKey]));
  const take = async (typed: string) => {
    const taken = typed === held ? ok(undefined) : await setJobField(bench, field, typed);
    setRefused(taken.ok ? null : taken.message);
    return taken.ok;
  };
  const shared = { id: `job-${field.key}`, label: field.label, held, refused, take };
  const note = field.note === '' ? {} : { note: field.note };
  if (field.measure === 'lines' || field.measure === 'priced') return <LinesEntry {...shared} {...note} />;
  const choices = field.measure === 'choice' ? field.choices : undefined;
  return <Entry look="setting" choices={choices} {...shared} {...note} />;
}

/** 0 stands for none, and is not shown. */
function heldText({ measure }: JobField, value: string | number): string {
  if (typeof value === 'string') return value;
  if (value === 0) return '';
  return measure === 'percent' ? `${Number((value * 100).toPrecision(10))}%` : String(value);
}

function Proposal({ bench }: { readonly bench: Bench }) {
  const [asking, setAsking] = useState(false);
  const write = async (replace: boolean) => setAsking(await writeProposal(bench, replace));
  return (
    <section class="card" aria-labelledby="proposal-title">
      <h2 id="proposal-title">Proposal</h2>
      <p>The sheet in the workbook follows the takeoff. The file holds the proposal alone, to be sent.</p>
      {asking ? (
        <Ask
          askedBy="write-proposal"
          title="This workbook already has a Proposal"
          about="Writing again replaces it."
          yes="Write over"
          no="Leave as it is"
          onYes={() => write(true)}
          onNo={() => setAsking(false)}
        />
      ) : (
        <div class="pair">
          <button id="write-proposal" type="button" onClick={() => write(false)}>
            Write the Proposal sheet
          </button>
          <button type="button" onClick={() => saveProposalAlone(bench)}>
            Save the proposal alone
          </button>
        </div>
      )}
    </section>
  );
}
