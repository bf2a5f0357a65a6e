import { rangeAddress, type CellPosition } from '../address';
import type { Cell } from '../sheet';
import { calls } from '../formulas/calls';
import { XML_HEAD, MAIN } from './xml';

/** `cm` of a cell whose formula gives an array: the one entry of the metadata part, counted from 1. */
export const DYNAMIC_ARRAY = 1;

/**
 * The area that a formula of an array fills, its own cell at least; null for a formula of a single value. Excel takes
 * every worksheet function of an add-in for one that may give an array, and writes its cell so; without the mark it would
 * show `@` in front of the function.
 */
export function arrayArea({ formula, spill }: Cell, at: CellPosition): string | null {
  if (formula === undefined || (spill === undefined && calls(formula).length === 0)) return null;
  const { rows, columns } = spill ?? { rows: 1, columns: 1 };
  return rangeAddress({ first: at, last: { row: at.row + rows - 1, column: at.column + columns - 1 } });
}

/** Says of every cell that points at it (`cm`) that its array may grow and shrink ([MS-XLSX] 2.4.1, dynamicArrayProperties). */
export function metadataXml(): string {
  const may =
    'copy pasteAll pasteValues merge splitFirst rowColShift clearFormats clearComments assign coerce cellMeta';
  const flags = may
    .split(' ')
    .map((flag) => ` ${flag}="1"`)
    .join('');
  return (
    `${XML_HEAD}<metadata xmlns="${MAIN}" xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray">` +
    `<metadataTypes count="1"><metadataType name="XLDAPR" minSupportedVersion="120000"${flags}/></metadataTypes>` +
    '<futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}">' +
    '<xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata>' +
    '<cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>'
  );
}
