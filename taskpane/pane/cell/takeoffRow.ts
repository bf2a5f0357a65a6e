import { readEnds, readHead } from '../../../src/head/words';
import type { Opening, OpeningField, Table } from '../../../src/schedule/opening';
import { blankOpening } from '../../../src/schedule/opening';
import type { Unit } from '../../../src/unit';
import { readTakeoff, type TakeoffRow } from '../../../src/workbook/takeoff/read';

/**
 * The opening in a row (from 1) of the Takeoff sheet as it stands there now, edits included, its lengths in `unit`; null
 * where there is none.
 */
export function openingInRow(table: Table, row: number, unit: Unit): Opening | null {
  const found = readTakeoff(table, null, unit)?.find(({ sheetRow }) => sheetRow === row);
  return found === undefined ? null : openingOf(found);
}

/** A row's cells as an opening; what is no figure or word of its kind is left open, as a doubt of the row. */
export function openingOf({ no, sheetRow, inputs }: TakeoffRow): Opening {
  const text = (key: OpeningField) => (inputs[key] === null ? null : String(inputs[key]));
  const figure = (key: OpeningField) => {
    const value = inputs[key];
    return typeof value === 'number' && Number.isFinite(value) ? value : null;
  };
  const head = readHead(text('head') ?? '');
  const ends = readEnds(text('ends') ?? '');
  return {
    ...blankOpening(sheetRow),
    no,
    mark: text('mark') ?? '',
    quantity: figure('quantity'),
    head: head.ok ? head.value : null,
    span: figure('span'),
    rise: figure('rise'),
    reveal: figure('reveal'),
    face: figure('face'),
    thickness: figure('thickness'),
    species: text('species'),
    ends: ends.ok ? ends.value : null,
    leg: figure('leg'),
    profile: text('profile'),
    place: text('place'),
    remarks: text('remarks'),
    sides: figure('sides'),
    arcs: figure('arcs'),
    haunch: figure('haunch'),
    segmentsWanted: figure('segmentsWanted'),
    otherLeg: figure('otherLeg'),
    priceAgreed: figure('priceAgreed'),
  };
}
