/** The door of the schedule room: a file or a range in, openings out. */
export { chooseTable, readTables } from './readTables';
export { readSchedule } from './readSchedule';
export { MEANINGS, type Meaning, type MeaningKey } from './meanings';
export type { Choices } from './layout';
export type { Opening, OpeningField, OpeningInputs, Problem, Schedule, Table } from './opening';
