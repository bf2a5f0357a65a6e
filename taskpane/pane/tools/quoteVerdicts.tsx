import { useEffect, useState } from 'preact/hooks';
import {
  amountText,
  byStake,
  summaryText,
  totalTexts,
  type Finding,
  type LineCheck,
  type QuoteCheck,
} from '../../../src/check/quote';
import { writeCheck } from '../deeds/checkQuote';
import type { Bench } from '../deeds/bench';
import { count } from '../format';
import { Ask } from '../parts/ask';

interface VerdictsProps {
  readonly bench: Bench;
  readonly check: QuoteCheck;
  readonly listed: number;
  readonly more: () => void;
}

/** What was found: what has to be known first, counts, totals, then every line that differs, quoted beside right. */
export function QuoteVerdicts({ bench, check, listed, more }: VerdictsProps) {
  const { counts } = check;
  // Most money at stake first; what agrees needs no reading.
  const open = byStake(check.lines.filter((line) => line.verdict !== 'agrees'));
  return (
    <section class="verdicts" aria-labelledby="verdicts-title">
      <h2 id="verdicts-title">{check.quote.name}</h2>
      {check.atTop.map((text) => (
        <p key={text} class="needs">
          {text}
        </p>
      ))}
      <p class="tally" role="status">
        <span class="flag ready">
          {count(counts.agrees, 'line')} {counts.agrees === 1 ? 'agrees' : 'agree'}
        </span>
        {counts.differs > 0 && (
          <span class="flag differs">
            {counts.differs.toLocaleString()} {counts.differs === 1 ? 'differs' : 'differ'}
          </span>
        )}
        {counts["can't tell"] > 0 && (
          <span class="flag attention">{counts["can't tell"].toLocaleString()} can’t be told</span>
        )}
      </p>
      <ul class="facts">
        {totalTexts(check).map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <Summary text={summaryText(check)} />
      <WriteCheck bench={bench} />
      <ul class="openings">
        {open.slice(0, listed).map((line) => (
          <Line key={line.line.row} line={line} amount={amountText(line)} />
        ))}
      </ul>
      {open.length > listed && (
        <button type="button" class="wide" onClick={more}>
          Show more: {(open.length - listed).toLocaleString()} not listed yet
        </button>
      )}
      <Sums check={check} />
      {check.notQuoted.length > 0 && (
        <>
          <h3>Openings without a line</h3>
          <ul class="facts">
            {check.notQuoted.map((one) => (
              <li key={one.place}>
                {one.opening.opening.mark || `Row ${one.opening.opening.row}`}: {one.finding.text}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function Line({ line: { line, verdict, findings }, amount }: { readonly line: LineCheck; readonly amount: string }) {
  // What the quote doesn't give is worth a word only where nothing else could be judged.
  const open = findings.filter((one) => one.verdict !== 'agrees' && (!one.notGiven || verdict === "can't tell"));
  const wrong = open.filter(({ said }) => said !== null);
  const rest = open.filter(({ said }) => said === null);
  return (
    <li class={`card opening ${verdict === 'differs' ? 'wrong' : 'troubled'}`}>
      <h3>
        {line.mark || line.description || 'No mark'} <span class="soft">row {line.row}</span>{' '}
        <span class={`flag ${verdict === 'differs' ? 'differs' : 'attention'}`}>{verdict}</span>
      </h3>
      {wrong.length > 0 && (
        <table class="beside">
          <thead>
            <tr>
              <th scope="col">Figure</th>
              <th scope="col">Quoted</th>
              <th scope="col">Right</th>
            </tr>
          </thead>
          <tbody>
            {wrong.map((finding, index) => (
              <Beside key={index} finding={finding} />
            ))}
          </tbody>
        </table>
      )}
      <ul class="troubles">
        {[...rest]
          .sort((one, other) => Number(other.verdict === 'differs') - Number(one.verdict === 'differs'))
          .map((finding, index) => (
            <li key={index} class={finding.verdict === 'differs' ? 'differs' : ''}>
              {finding.text}
            </li>
          ))}
      </ul>
      {amount !== '' && <p class="soft">{amount}</p>}
    </li>
  );
}

/** One figure quoted beside right, and below it the mistake that explains it. */
function Beside({ finding: { about, said, mistakes } }: { readonly finding: Finding }) {
  return (
    <>
      <tr>
        <th scope="row">{about}</th>
        <td>{said!.quoted}</td>
        <td>{said!.right}</td>
      </tr>
      {mistakes.length > 0 && (
        <tr>
          <td colSpan={3} class="why">
            {mistakes.join(' or ')}
          </td>
        </tr>
      )}
    </>
  );
}

/** Charges, subtotals and totals that don't follow from the quote's own figures, or can't be told to. */
function Sums({ check }: { readonly check: QuoteCheck }) {
  const open = check.sums.filter(({ finding }) => finding.verdict !== 'agrees');
  if (open.length === 0) return null;
  return (
    <>
      <h3>Its own sums</h3>
      <ul class="facts">
        {open.map(({ item, finding }) => (
          <li key={item.row}>
            Row {item.row}: {finding.text}
          </li>
        ))}
      </ul>
    </>
  );
}

function WriteCheck({ bench }: { readonly bench: Bench }) {
  const [asking, setAsking] = useState(false);
  const write = async (replace: boolean) => setAsking(await writeCheck(bench, replace));
  if (!asking) {
    return (
      <button id="write-check" type="button" class="fit" onClick={() => write(false)}>
        Write it to the Check sheet
      </button>
    );
  }
  return (
    <Ask
      askedBy="write-check"
      title="This workbook already has Check"
      about="Writing again replaces it with this quote."
      yes="Write over"
      no="Leave as it is"
      onYes={() => write(true)}
      onNo={() => setAsking(false)}
    />
  );
}

/** What could be pasted into a reply. */
function Summary({ text }: { readonly text: string }) {
  const [copied, setCopied] = useState('');
  useEffect(() => setCopied(''), [text]);
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text);
      setCopied('Copied.');
    } catch {
      // Some hosts keep the clipboard to themselves.
      setCopied('The clipboard is closed to this pane: select the text and copy it.');
    }
  };
  return (
    <details class="left-out">
      <summary>Summary for a reply</summary>
      <label class="hidden" for="quote-summary">
        Summary for a reply
      </label>
      <textarea id="quote-summary" readOnly rows={10} value={text} />
      <div class="pair">
        <button type="button" onClick={copy}>
          Copy it
        </button>
        <span role="status">{copied}</span>
      </div>
    </details>
  );
}
