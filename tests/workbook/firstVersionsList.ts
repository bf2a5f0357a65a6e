import { opening } from '../takeoff/openings';

/** The list that firstVersion.xlsx was filled from, as it is read today. */
export const firstVersionsList = () => [
  opening({ row: 2, mark: 'A1', quantity: 2, head: 'segmental', span: 36, rise: 8, leg: 50 }),
  opening({ row: 3, mark: 'A2', head: 'half round', span: 40 }),
  opening({
    ...{ row: 4, mark: 'A3', head: 'segmental', span: 48 },
    problems: [{ row: 4, field: 'rise', message: 'Rise can\'t be read: the cell says "?".' }],
  }),
  opening({ row: 5, mark: 'A4', quantity: 3, head: 'elliptical', span: 60, rise: 18 }),
  opening({ row: 6, mark: 'A4', head: 'segmental', span: 30, rise: 5 }),
];
