import type { MoneyFigureName } from '../../takeoff/moneyFigures';
import type { CellsOfRow } from './columns';

/**
 * The plain formula of each figure of money, on the cells of its row: native arithmetic in both forms of the workbook. Shared
 * money and wood are looked up by the opening's number, the factor by its wood.
 */
export const MONEY_FORMULAS: Readonly<Record<MoneyFigureName, (at: CellsOfRow) => string>> = {
  share: (at) => `VLOOKUP(${at.no},Shares,2,FALSE)`,
  'shared wood': (at) => `VLOOKUP(${at.no},Shares,3,FALSE)`,
  'wood factor': (at) => `IF(COUNTIF(Factor_woods,${at.stock})=0,Shop_unplanned,VLOOKUP(${at.stock},Factors,2,FALSE))`,
  material: (at) =>
    `IF(OR(${at.wood}="",${at.no}=""),"",(${at.wood}+${MONEY_FORMULAS['shared wood'](at)})*${MONEY_FORMULAS['wood factor'](at)})`,
  cost: (at) => `${at.material}+${at.labor}+${MONEY_FORMULAS.share(at)}`,
  'unit price': (at) =>
    `IF(${at.material}="","",IF(N(${at.priceAgreed})>0,${at.priceAgreed},` +
    `MAX(ROUND(Shop_piece_minimum,2),ROUND((${MONEY_FORMULAS.cost(at)})/${at.quantity}*Shop_sell,2))))`,
  price: (at) => `IF(${at.unitPrice}="","",ROUND(${at.unitPrice}*${at.quantity},2))`,
};
