import { lengthText } from '../lengthText';
import { roundTo } from '../rounding';
import type { EndCut } from '../tickets/cuts';
import { handsText } from '../takeoff/hands';
import type { GlueTicket, SawTicket, Ticket } from '../tickets/tickets';
import type { TrimTicket } from '../tickets/trim';
import type { Unit } from '../unit';
import { headingCell } from './columnHeads';
import type { Cell, Sheet } from './sheet';
import { inLines, pageBreaksBetween } from './textLines';
import { inPages, LINE_WIDE, PAGE_ROWS, ROWS_AROUND, table, text, WIDTHS, type Rows } from './ticketRows';
import { titleRow } from './titleRow';

interface Station {
  readonly title: string;
  readonly about: string;
  readonly headings: readonly string[];
  readonly rows: Rows;
}

/**
 * What each station of the bench needs of every opening, by No.: glue-up, saw, run, trim, pack. Stations share a printed page
 * where they fit on one. `source` is the schedule's name; `older` the formula that says where the sheet is older than the rows.
 */
export function ticketsSheet(tickets: readonly Ticket[], unit: Unit, source: string, older?: string): Sheet {
  const stations = [glueUp, saw, run, trim, pack].map((station) => station(tickets, unit));
  const rows: Rows = [
    titleRow('Tickets', older),
    [
      {
        value: `From ${source}, as planned when this was written. ${unit === 'in' ? 'Inches' : 'Millimeters'}; angles in degrees off square.`,
        style: 'note',
        format: '@',
      },
    ],
  ];
  const head = rows.length;
  const blocks: number[] = [];
  for (const { title, about, headings, rows: body } of stations) {
    const lead = [
      [{ value: title, style: 'group' } satisfies Cell],
      ...inLines(about, LINE_WIDE).map((line) => [null, text(line, 'note')]),
    ];
    const again: Rows = [[{ value: `${title}, continued`, style: 'group' }]];
    const named = WIDTHS.map((_, at) => headingCell(headings[at] ?? ''));
    const pages = inPages(body, PAGE_ROWS - lead.length - ROWS_AROUND);
    for (const [at, page] of pages.entries()) {
      const block = [...(at === 0 ? lead : again), named, ...page, []];
      rows.push(...block);
      blocks.push(block.length);
    }
  }
  return {
    name: 'Tickets',
    rows,
    widths: WIDTHS,
    frozenRows: 1,
    frozenColumns: 0,
    repeatRows: [1, 1],
    landscape: true,
    // The first block stands below the title on the first page.
    pageBreaks: pageBreaksBetween(blocks, head, PAGE_ROWS).filter((row) => row > head),
    home: 'A1',
    locked: true,
  };
}

function glueUp(tickets: readonly Ticket[], unit: Unit): Station {
  return {
    title: 'Glue-up',
    about:
      'Cut the segments mitered at both ends, every second one flipped on the board; glue up flat; let the glue cure fully.',
    headings: [
      'No.',
      'Mark',
      'Place',
      'Rings',
      'Segments',
      'Board',
      'Seg. width',
      'Long edge',
      'Short edge',
      'Miter',
      'Joints, wood, and boards it comes from',
    ],
    rows: tickets.flatMap((ticket) =>
      ticket.glue.flatMap((glue, at) => {
        const boards = glue.boards
          .map(({ count, width, length }) => `${count} of ${lengthText(width, unit)} × ${lengthText(length, unit)}`)
          .join(', ');
        return table(
          [
            ...opening(ticket, at),
            `${glue.rings} × ${glue.ring}`,
            String(glue.segments),
            lengthText(glue.boardWidth, unit),
            lengthText(glue.width, unit),
            lengthText(glue.longEdge, unit),
            lengthText(glue.shortEdge, unit),
            angle(glue.miter),
          ],
          `${jointWords(glue)}; ${glue.wood}; ${boards === '' ? 'not in a plan of boards' : `boards ${boards}`}`,
        );
      }),
    ),
  };
}

/** `1 joint`; of several rings `2 joints each, 6 segments in all`. */
function jointWords({ joints, rings, segments }: GlueTicket): string {
  const each = joints === 0 ? 'no joint' : joints === 1 ? '1 joint' : `${joints} joints`;
  return rings === 1 ? each : `${each}${joints === 0 ? '' : ' each'}, ${rings * segments} segments in all`;
}

function saw(tickets: readonly Ticket[], unit: Unit): Station {
  const radius = (value: number) => lengthText(value, unit, 32);
  return {
    title: 'Saw',
    about:
      'Both radii from one trammel point; they hold the margins, as do degrees, across and high, which are those of the ring. Where no trammel reaches, lay the arcs out by the ordinates under the row.',
    headings: [
      'No.',
      'Mark',
      'Place',
      'Rings',
      'Inside R',
      'Outside R',
      'Degrees',
      'Across',
      'High',
      '',
      'Finished head over its outside edge',
    ],
    rows: tickets.flatMap((ticket) =>
      ticket.saw.flatMap((one, at) => {
        const { finished } = ticket;
        const points =
          finished?.longPoints == null ? '' : `, ${lengthText(finished.longPoints, unit)} across long points`;
        const whole =
          finished === null || at > 0
            ? ''
            : `${lengthText(finished.width, unit)} wide × ${lengthText(finished.height, unit)} high${points}`;
        return [
          ...table(
            [
              ...opening(ticket, at),
              `${one.rings} × ${one.ring}`,
              radius(one.inside),
              radius(one.outside),
              angle(one.blankAngle),
              lengthText(one.across, unit),
              lengthText(one.high, unit),
              '',
            ],
            whole,
          ),
          ...ordinateRows(one, unit),
        ];
      }),
    ),
  };
}

/** Heights over the straight line between an arc's ends, at distances from its middle: `0: 6 1/16; 4: 5 7/8`. */
function ordinateRows({ ordinates }: SawTicket, unit: Unit): Rows {
  return (ordinates ?? []).flatMap(({ arc, rows }) => {
    const said = rows.map(([x, height]) => `${lengthText(x, unit, 32)}: ${lengthText(height, unit, 32)}`).join('; ');
    return inLines(`${arc} arc, from the middle: height over the line between its ends: ${said}`, LINE_WIDE).map(
      (line) => [null, text(line)],
    );
  });
}

function run(tickets: readonly Ticket[], unit: Unit): Station {
  const runs = tickets
    .flatMap((ticket) => ticket.run.map((one) => ({ ticket, one })))
    .sort((a, b) => a.one.order - b.one.order || a.ticket.no - b.ticket.no);
  return {
    title: 'Run',
    about: 'In the order that changes knives and guides least; the cards of the set-ups say how each is made.',
    headings: ['No.', 'Mark', 'Place', 'Set-up', 'Pieces', 'Center length', 'Guide set'],
    rows: runs.flatMap(({ ticket, one }) =>
      table(
        [...opening(ticket), `number ${one.order}`, String(one.pieces), lengthText(one.runLength, unit)],
        [one.setup, ...(one.straightGuides === null ? [] : [one.straightGuides])].join('; '),
      ),
    ),
  };
}

function trim(tickets: readonly Ticket[], unit: Unit): Station {
  return {
    title: 'Trim',
    about:
      'Lengths along each edge. One straight cut has two marks on a curve: off the radial line at the inside corner, and at the outside one; minus: the inside is longer. Of a leg its upper end; its foot is square.',
    headings: [
      'No.',
      'Mark',
      'Place',
      'Piece',
      'Inside edge',
      'Outside edge',
      'Left, in',
      'Left, out',
      'Right, in',
      'Right, out',
      'Of each set',
    ],
    rows: tickets.flatMap((ticket) =>
      ticket.trim.flatMap((one, at) => {
        const cut = (end: EndCut | null) => (end === null ? ['', ''] : [angle(end.inside), angle(end.outside)]);
        return table(
          [
            ...opening(ticket, at),
            one.piece,
            lengthText(one.insideEdge, unit),
            lengthText(one.outsideEdge, unit),
            ...cut(one.left),
            ...cut(one.right),
          ],
          trimNotes(ticket, one, at),
        );
      }),
    ),
  };
}

/** What else a piece asks for: how many of it, what it meets that is not molding, and on which side its mate is high. */
function trimNotes({ heads, hands }: Ticket, { meets }: TrimTicket, at: number): string {
  const notes = [
    ...(heads === 1 ? [] : [`${heads} sets: ${heads} of this`]),
    ...(meets === 'plinth block' ? ['less the plinth block it stands on'] : []),
    ...(meets === 'keystone' ? ['see how the keystone sits on it'] : []),
    ...(hands !== null && at === 0 ? [handsText(hands)] : []),
  ];
  return notes.join('; ');
}

function pack(tickets: readonly Ticket[]): Station {
  return {
    title: 'Pack',
    about: 'Write on the back of each piece: No. and mark, which set, which piece, and the place.',
    headings: ['No.', 'Mark', 'Place', 'Sets', 'Marked'],
    rows: tickets.flatMap((ticket): Rows => {
      const { place } = ticket;
      const { sets, pieces, extras } = ticket.pack;
      const named = pieces.map((piece, at) => `${at + 1} of ${pieces.length} ${piece}`).join('; ');
      const set = setWords(ticket);
      const label = ['No. ' + ticket.no, ticket.mark].filter((part) => part !== '').join(' ');
      return [
        ...table([...opening(ticket), String(sets)], `${label}${set}: ${named}${place === '' ? '' : `; ${place}`}`),
        ...(extras === null ? [] : table(['', '', '', ''], `with all: ${extras}`)),
      ];
    }),
  };
}

/** Which sets there are, those of a high side left apart from those of a high side right. */
function setWords({ pack: { sets }, hands }: Ticket): string {
  const all = sets === 1 ? '' : `, set 1 to ${sets} of ${sets}`;
  if (hands === null) return all;
  if (hands === 'unsaid') return `${all}, high side left or right`;
  const { right, left } = hands;
  if (right === 0 || left === 0) return `${all}, high side ${left === 0 ? 'right' : 'left'}`;
  const run = (from: number, to: number) => (from === to ? String(from) : `${from} to ${to}`);
  return `, set ${run(1, right)} of ${sets} high side right, set ${run(right + 1, sets)} of ${sets} high side left`;
}

/** No., mark and place; the place only in the first of an opening's rows. */
function opening({ no, mark, row, place }: Ticket, at = 0): string[] {
  return [String(no), mark === '' ? `row ${row}` : mark, at === 0 ? place : ''];
}

function angle(degrees: number): string {
  return `${roundTo(2, degrees)}°`;
}
