import { amountOf, byStake, dollars, type Finding, type QuoteCheck } from '../src/check/quote';

/** The check as `--json` prints it, lines with the most money at stake first. */
export function checkJson(check: QuoteCheck) {
  const { openings } = check.takeoff;
  return {
    lines: byStake(check.lines).map(({ line, places, how, verdict, agreesIn, stake, findings }) => ({
      row: line.row,
      mark: line.mark,
      description: line.description,
      openings: places.map((place) => ({ row: openings[place]!.opening.row, mark: openings[place]!.opening.mark })),
      matched: how,
      verdict,
      agreesIn,
      notUnderstood: line.unread,
      stake: cents(stake),
      quantity: line.quantity,
      radius: line.radius,
      length: line.length,
      unitPrice: line.unitPrice,
      extension: line.extension,
      findings: findings.map(findingJson),
    })),
    sums: check.sums.map(({ item, finding }) => ({
      row: item.row,
      kind: item.kind === 'sum' ? item.sum : item.charge,
      label: item.text,
      amount: item.amount,
      ...findingJson(finding),
    })),
    notQuoted: check.notQuoted.map(({ opening, finding }) => ({
      row: opening.opening.row,
      mark: opening.opening.mark,
      price: opening.cost?.price ?? null,
      ...findingJson(finding),
    })),
    causes: check.causes.map(({ cause, count, where, dollars: off, stake }) => ({
      cause,
      count,
      where,
      dollars: off === null ? null : cents(off),
      stake: cents(stake),
    })),
    counts: check.counts,
    quoted: cents(check.compared.quoted),
    ours: cents(check.compared.ours),
    otherLines: cents(check.compared.otherLines),
    charges: check.compared.charges,
    total: cents(check.compared.total),
    columnsSetAside: check.quote.setAside.map(({ index, understood, done }) => ({
      column: index + 1,
      heading: check.quote.headings[index] ?? '',
      understood,
      done,
    })),
    passedOver: check.quote.passedOver,
  };
}

function findingJson({ about, verdict, text, mistakes, quoted, right, dollars: off }: Finding) {
  return { about, verdict, text, mistakes, quoted, right, dollars: off === null ? null : cents(off) };
}

function cents(amount: number): number {
  return Math.round(amount * 100) / 100;
}

/** Verdicts for a person: what differs or can't be told, most money at stake first; what agrees is only counted. */
export function checkText({ lines, sums, notQuoted, takeoff }: QuoteCheck): string {
  const said: string[] = [];
  for (const check of byStake(lines)) {
    if (check.verdict === 'agrees') continue;
    const { line, places } = check;
    const marks = places.map((place) => takeoff.openings[place]!.opening.mark).join(', ') || line.mark;
    const amount = amountOf(line);
    said.push(
      `Row ${line.row}${marks && `, ${marks}`}${amount === null ? '' : `, ${dollars(amount)}`}: ${check.verdict}`,
    );
    for (const { verdict, text, notGiven } of check.findings)
      if (verdict !== 'agrees' && !notGiven) said.push(`    ${text}`);
  }
  const around = [
    ...sums
      .filter(({ finding }) => finding.verdict !== 'agrees')
      .map(({ item, finding }) => `Row ${item.row}: ${finding.text}`),
    ...[...notQuoted].sort((one, other) => other.finding.stake - one.finding.stake).map(({ finding }) => finding.text),
  ];
  return [...said, ...(around.length > 0 ? ['', ...around] : [])].map((text) => `${text}\n`).join('');
}
