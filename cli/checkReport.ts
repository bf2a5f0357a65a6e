import { byStake, correction, type Finding, type QuoteCheck } from '../src/check/quote';

/** The check as `--json` prints it, lines with the most money at stake first. */
export function checkJson(check: QuoteCheck) {
  const { openings } = check.takeoff;
  return {
    lines: byStake(check.lines).map(({ line, places, how, verdict, agreesIn, stake, findings, corrected }) => ({
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
      correctedExtension: corrected,
      findings: findings.map(findingJson),
    })),
    sums: check.sums.map(({ item, finding }) => ({
      row: item.row,
      kind: item.kind === 'sum' ? item.sum : item.charge,
      label: item.text,
      amount: item.amount,
      corrected: check.corrected.sums.get(item.row) ?? null,
      ...findingJson(finding),
    })),
    notQuoted: check.notQuoted.map(({ opening, extra, price, finding }) => ({
      row: opening.opening.row,
      mark: opening.opening.mark,
      extra,
      price,
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
    correctedTotal: check.corrected.total,
    atStake: {
      off: check.stakes.off === null ? null : cents(check.stakes.off),
      prices: cents(check.stakes.prices),
      notQuoted: cents(check.stakes.omitted),
      hanging: { lines: check.stakes.hanging.lines, amount: cents(check.stakes.hanging.amount) },
    },
    atTop: check.atTop,
    columnsSetAside: check.quote.setAside.map(({ index, understood, done }) => ({
      column: index + 1,
      heading: check.quote.headings[index] ?? '',
      understood,
      done,
    })),
    passedOver: check.quote.passedOver,
  };
}

function findingJson(finding: Finding) {
  const { about, verdict, text, mistakes, quoted, right, dollars: off } = finding;
  return {
    about,
    verdict,
    text,
    mistakes,
    quoted,
    right,
    dollars: off === null ? null : cents(off),
    // As the summary has it.
    ...(verdict === 'differs' && { correction: correction(finding) }),
  };
}

function cents(amount: number): number {
  return Math.round(amount * 100) / 100;
}
