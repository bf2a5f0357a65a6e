/** Mistakes of unit: any figure can suffer them. `right` is in inches. */
export const SCALE_MISTAKES: readonly {
  readonly name: string;
  readonly figures: (right: number) => readonly number[];
}[] = [
  { name: 'feet read as inches', figures: (right) => [right / 12] },
  { name: 'inches read as feet', figures: (right) => [right * 12] },
  { name: 'millimeters read as inches', figures: (right) => [right * 25.4] },
  { name: 'inches read as millimeters', figures: (right) => [right / 25.4] },
  { name: 'centimeters read as millimeters', figures: (right) => [right / 10] },
  { name: 'millimeters read as centimeters', figures: (right) => [right * 10] },
];
