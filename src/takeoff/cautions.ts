/** Where a caution matters. */
export const CAUTION_PLACES = ['glue-up', 'setting up', 'before power', 'running'] as const;
export type CautionPlace = (typeof CAUTION_PLACES)[number];

export interface Caution {
  readonly place: CautionPlace;
  readonly text: string;
  /** A published source, or `common practice`. */
  readonly source: string;
}

/** Said where a habit of the trade has no published source. */
export const COMMON_PRACTICE = 'common practice';

/**
 * The cautions of a job, printed once in full. What a set-up's own steps say is not repeated here. Paragraphs of 29 CFR 1910.213
 * are named only where the federal wording was at hand; else the section alone. California's 8 CCR 4318 repeats the federal rule
 * for molding machines.
 */
export const CAUTIONS: readonly Caution[] = [
  {
    place: 'glue-up',
    text: "An end-grain butt joint has only about a quarter of the wood's strength. Keep the grain at each joint within 30° of the curve, and let the glue cure fully before sawing or running.",
    source: 'Wood Handbook (FPL-GTR-190), chapter 10; ANSI/AWI 0622-2024, 3.3.2',
  },
  {
    place: 'setting up',
    text: 'No hand goes to knives, head or guides while the cutter can start: disconnect it and lock it out.',
    source: 'common practice; 29 CFR 1910.213(a)(10) recommends a disconnect that locks',
  },
  {
    place: 'setting up',
    text: 'Knives and heads sharp, adjusted and firmly secured. Two or more knives in one head are balanced; a single one has its counterweight.',
    source: '29 CFR 1910.213(s)(2)',
  },
  {
    place: 'setting up',
    text: 'The head runs without play, and the machine at full speed without a vibration that is felt.',
    source: '29 CFR 1910.213(a)(1)–(2)',
  },
  {
    place: 'before power',
    text: 'The hood over the head is fastened before the cutter has power. It may serve as the guard where it is as stout as one.',
    source: '29 CFR 1910.213; 8 CCR 4318(a)–(b)',
  },
  {
    place: 'before power',
    text: 'Feed rolls are guarded where they draw in, at every thickness of stock.',
    source: '29 CFR 1910.213; 8 CCR 4318(c)',
  },
  {
    place: 'before power',
    text: 'Look over every glue joint. A blank with an open, short or unsound joint is not run.',
    source: COMMON_PRACTICE,
  },
  {
    place: 'running',
    text: 'No piece shorter than the machine holds: one roll at least has it at any time.',
    source: "the machine's manual; shop setting Shortest piece",
  },
  {
    place: 'running',
    text: 'Hands stay off the piece near rolls and cutter. Both are stopped before anything is cleared.',
    source: COMMON_PRACTICE,
  },
  {
    place: 'running',
    text: 'Hearing protection: 90 dBA is the limit for 8 hours, 95 for 4, 100 for 2; the action level is an 8-hour average of 85.',
    source: '29 CFR 1910.95, Table G-16',
  },
  {
    place: 'running',
    text: 'Little wood dust in the air: OSHA allows 15 mg/m³ in all and 5 respirable as nuisance dust; NIOSH recommends no more than 1.',
    source: 'OSHA and NIOSH exposure limits for wood dust',
  },
  {
    place: 'running',
    text: 'Eye protection. No gloves, loose sleeves or jewelry near rolls and cutter.',
    source: COMMON_PRACTICE,
  },
];

/** The two lines that every set-up card repeats. */
export const CARD_CAUTIONS = [
  'Cutter locked out while a hand is at knife, head or guides; hood fastened before it has power. Eyes and ears protected.',
  'Hands off the piece near rolls and cutter; stop both before clearing anything. All cautions of this job stand under the list of set-ups.',
] as const;

/** Closes the cautions. */
export const NOT_A_SUBSTITUTE =
  "None of this replaces the machine's manual, local code or a competent person's judgment.";
