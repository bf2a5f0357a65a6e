import type { PaneState, Place, Step } from './state';

/** The pages of help lie beside the page that shows the pane. */
const PAGES = 'docs/';

/** The paragraph of help for each step of a takeoff, and for each of the pane's other places. */
export const HELP_OF_STEP: Readonly<Record<Step, string>> = {
  list: 'guide.html#1-the-schedule',
  headings: 'guide.html#2-what-each-column-holds',
  openings: 'guide.html#3-what-needs-something',
  fill: 'guide.html#4-the-takeoff',
};
export const HELP_OF_PLACE: Readonly<Record<Exclude<Place, 'takeoff'>, string>> = {
  figure: 'functions.html#worksheet-functions',
  cell: 'guide.html#4-the-takeoff',
  quote: 'guide.html#6-the-quote',
  drawings: 'guide.html#5-set-ups-guides-and-boards',
  job: 'guide.html#8-the-proposal',
  shop: 'settings.html#settings',
};

/** Address of the paragraph on what the pane shows. */
export function helpAddress({ place, step }: Pick<PaneState, 'place' | 'step'>): string {
  return PAGES + (place === 'takeoff' ? HELP_OF_STEP[step] : HELP_OF_PLACE[place]);
}

/** Of a worksheet function's own section: its heading is its name. */
export function functionHelp(name: string): string {
  return `${PAGES}functions.html#${name.toLowerCase()}`;
}

/** Of a group of settings. */
export function settingsHelp(group: string): string {
  return `${PAGES}settings.html#${group.toLowerCase()}`;
}
