/** The door of the schedule room: a file or a range in, openings out. */
export { chooseTable, readTables } from './readTables';
export { readSchedule, type HowToRead } from './readSchedule';
export { MEANINGS, type Meaning, type MeaningKey } from './meanings';
export type { Choices } from './layout';
export type { CellValue } from './opening';
export type { Choice, Draft } from './asked';
export type {
  Answers,
  Opening,
  OpeningField,
  OpeningInputs,
  Problem,
  Question,
  Reading,
  Schedule,
  Table,
  Unread,
} from './opening';
