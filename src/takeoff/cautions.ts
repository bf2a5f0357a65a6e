/** Where a caution matters: it is shown there and nowhere else. */
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
 * Cautions of the set-up sheet. Paragraphs of 29 CFR 1910.213 are named only where the federal wording was at hand; else the
 * section alone. California's 8 CCR 4318 repeats the federal rule for molding machines.
 */
export const CAUTIONS: readonly Caution[] = [
  {
    place: 'setting up',
    text: 'Disconnect and lock out the cutter before touching knives, head or guides.',
    source: 'common practice; 29 CFR 1910.213(a)(10) recommends a disconnect that locks',
  },
  {
    place: 'setting up',
    text: 'Knives and cutting heads must be sharp, properly adjusted and firmly secured. Two or more knives in one head must be balanced: one knife takes a counterweight.',
    source: '29 CFR 1910.213(s)(2)',
  },
  {
    place: 'setting up',
    text: 'The head must run without play, and the machine without sensible vibration at full speed.',
    source: '29 CFR 1910.213(a)(1)–(2)',
  },
  {
    place: 'before power',
    text: 'The hood over the cutting head is on and fastened before the cutter has power.',
    source: '29 CFR 1910.213; 8 CCR 4318(a)–(b)',
  },
  {
    place: 'before power',
    text: 'The feed rolls are guarded so that hands cannot reach where they draw in, whatever the thickness of the stock.',
    source: '29 CFR 1910.213; 8 CCR 4318(c)',
  },
  {
    place: 'before power',
    text: 'Look over every glue joint. A blank with an open, short or unsound joint is not run.',
    source: COMMON_PRACTICE,
  },
  {
    place: 'before power',
    text: 'Dust collection runs before the cutter does.',
    source: COMMON_PRACTICE,
  },
  {
    place: 'running',
    text: "Run no piece shorter than the machine's own shortest: both rolls must be able to hold it.",
    source: "the machine's manual; shop setting Shortest piece",
  },
  {
    place: 'running',
    text: 'Hands stay off the piece near the rolls and the cutter. Stop the cutter and the feed before clearing anything.',
    source: COMMON_PRACTICE,
  },
  {
    place: 'running',
    text: 'Check knives, guides and screws for tightness again about every two hours of running.',
    source: COMMON_PRACTICE,
  },
  {
    place: 'running',
    text: 'Wear hearing protection: 90 dBA is the limit for 8 hours, 95 for 4, 100 for 2. An 8-hour average of 85 is the action level.',
    source: '29 CFR 1910.95, Table G-16',
  },
  {
    place: 'running',
    text: 'Keep wood dust out of the air. OSHA allows 15 mg/m³ in all and 5 respirable as nuisance dust; NIOSH recommends no more than 1.',
    source: 'OSHA and NIOSH exposure limits for wood dust',
  },
  {
    place: 'running',
    text: 'Wear eye protection. No gloves, loose sleeves or jewelry near rolls and cutter.',
    source: COMMON_PRACTICE,
  },
  {
    place: 'glue-up',
    text: 'An end-grain butt joint holds only about a quarter of what the wood does. Keep the grain at each joint within 30° of the curve, and let the glue cure fully before sawing or running.',
    source: 'Wood Handbook (FPL-GTR-190), chapter 10; ANSI/AWI 0622-2024, 3.3.2',
  },
];

/** Closes every sheet that carries cautions. */
export const NOT_A_SUBSTITUTE =
  "This sheet does not replace the machine's manual, local code or a competent person's judgment.";

/** The cautions of some places, in order. */
export function cautionsFor(...places: readonly CautionPlace[]): readonly Caution[] {
  return CAUTIONS.filter(({ place }) => places.includes(place));
}
