/** A schedule as its author has it: what reading any print of it must come to. */
export interface Source {
  readonly headings: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export const HEADINGS = ['MARK', 'QTY', 'LOCATION', 'HEAD', 'WIDTH', 'RISE', 'REMARKS'];

const PLACES = ['BEDROOM 1', 'STAIR', 'MASTER BEDROOM, EAST WALL', 'KITCHEN', 'HALL', 'STUDY'];
const WIDTHS = [`3'-6 1/2"`, `42 5/8"`, `36"`, `4'-0"`, `60 3/16"`, `2'-11 7/8"`, `30 1/4"`];
const RISES = [`8 5/8"`, `10"`, `7 1/2"`, `12 3/16"`, `0'-9"`];
const REMARKS = ['', 'TEMPERED', 'VERIFY IN FIELD BEFORE THE CASING IS CUT', '', 'SEE DETAIL 4', ''];

/** An invented schedule of `count` segmental and half round windows. */
export function schedule(count: number): Source {
  return {
    headings: HEADINGS,
    rows: Array.from({ length: count }, (_, row) => {
      const isRound = row % 5 === 3;
      return [
        `W${row + 1}`,
        String(1 + ((row * 7) % 4)),
        PLACES[row % PLACES.length]!,
        isRound ? 'HALF ROUND' : 'SEGMENTAL',
        WIDTHS[row % WIDTHS.length]!,
        isRound ? '' : RISES[row % RISES.length]!,
        REMARKS[row % REMARKS.length]!,
      ];
    }),
  };
}

/** The same with two columns under a group's heading, "ROUGH OPENING". */
export function grouped(count: number): Source {
  const headings = ['MARK', 'QTY', 'ROUGH OPENING WIDTH', 'ROUGH OPENING HEIGHT', 'HEAD', 'RISE', 'REMARKS'];
  const rows = schedule(count).rows.map(([mark, qty, , head, width, rise, remarks]) => [
    mark!,
    qty!,
    width!,
    `5'-6"`,
    head!,
    rise!,
    remarks!,
  ]);
  return { headings, rows };
}
