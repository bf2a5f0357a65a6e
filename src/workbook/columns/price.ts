import { figure, inGroup, working, type TakeoffColumn } from './column';
import { CROWN_FEET, HAUNCH_FEET, overRings, priceAt } from './formulas';

const CURVED_LENGTH = `(${overRings(
  '{run}*RADIANS({blankAngle})*{outsideRadius}',
  '{haunchRun}*RADIANS({haunchBlankAngle})*{haunchOutsideRadius}',
)})`;

export const PRICE_COLUMNS: readonly TakeoffColumn[] = inGroup('Price', [
  working('laborMinutes', 'Labor minutes', 'minutes', {
    value: (row) => row.cost?.laborMinutes,
    formula:
      '{runMinutes}+{joints}*Shop_joint_minutes' +
      `+(${CURVED_LENGTH}*(Shop_saw_minutes+Shop_sand_minutes)+{counted}*{straightLength}*Shop_sand_minutes)/Shop_long_unit`,
    total: true,
  }),
  figure('material', 'Material', 'money', {
    value: (row) => row.cost?.material,
    formula:
      `(${overRings(`${CROWN_FEET}*${priceAt('{boardWidth}')}`, `${HAUNCH_FEET}*${priceAt('{haunchBoardWidth}')}`)}` +
      `+{straightFeet}*${priceAt('{ripped}')})*(1+Shop_waste)`,
    total: true,
  }),
  figure('labor', 'Labor', 'money', {
    value: (row) => row.cost?.labor,
    formula: '{laborMinutes}/60*Shop_shop_rate',
    total: true,
  }),
  figure('knifeShare', 'Share of the knife', 'money', {
    value: (row) => row.cost?.knifeShare,
    formula: 'IF({counted}=0,0,Shop_knife_grinding*{counted}/SUMIFS({counted:all},{knife:all},{knife}))',
    total: true,
  }),
  figure('setupShare', 'Share of set-ups', 'money', {
    value: (row) => row.cost?.setupShare,
    formula:
      '{guideSetups}*((Shop_guide_minutes+Shop_setup_minutes)/60*Shop_shop_rate+Shop_guide_material)' +
      '+{straightSetups}*Shop_setup_minutes/60*Shop_shop_rate',
    total: true,
  }),
  figure('cost', 'Cost', 'money', {
    value: (row) => row.cost?.cost,
    formula: '{material}+{labor}+{knifeShare}+{setupShare}',
    total: true,
  }),
  figure('unitPrice', 'Unit price', 'money', {
    value: (row) => row.cost?.unitPrice,
    formula:
      'IF({counted}=0,"",' +
      'ROUND({cost}/{counted}*IF(Shop_pricing="margin",1/(1-Shop_pricing_rate),1+Shop_pricing_rate),2))',
  }),
  figure('price', 'Price', 'money', {
    value: (row) => row.cost?.price,
    formula: 'IF({counted}=0,"",ROUND({unitPrice}*{counted},2))',
    total: true,
  }),
]);
