import { HEAD_SHAPES } from '../head/head';
import { readHead } from '../head/words';
import { AS_LISTED, LEAVE_OUT, type Choice } from './asked';
import { extrasChoices, NAMES_AN_EXTRA } from './extraCells';
import { capital } from './figure';
import { footageChoices, NAMES_FOOTAGE } from './straightStock';
import { togetherChoices } from './together';

/*
 * What remarks can mean for what is bought: data. Each meaning has a pattern, and the choices that are proposed for a match, the
 * likeliest first. Words that change nothing are taken out before anything is looked for.
 */

export interface RemarkMeaning {
  readonly pattern: RegExp;
  /** Behind the quoted words, in the question. */
  readonly means: string;
  choices(match: RegExpExecArray): readonly Choice[] | null;
}

const keepFirst = () => [AS_LISTED, LEAVE_OUT];
const leaveFirst = () => [LEAVE_OUT, AS_LISTED];

/** A length as it stands in a sentence. */
const LENGTH = String.raw`\d+(?:'\s*-?\s*\d+)?(?:[ -]\d+\/\d+|\/\d+)?(?:\.\d+)?[½¼¾⅛⅜⅝⅞]?\s*(?:"|”|″|''|'|in\b\.?|inch(?:es)?\b|mm\b|cm\b|ft\b)?`;
const COUNT_WORDS: Readonly<Record<string, number>> = { two: 2, three: 3, four: 4, five: 5, six: 6, eight: 8, ten: 10 };
const WOODS =
  'red oak|white oak|oak|hard maple|soft maple|maple|cherry|walnut|mahogany|poplar|pine|alder|ash|birch|fir|cedar|hickory|sapele|mdf|cypress|beech';

/** Remarks that change nothing of what is bought. */
export const CHANGES_NOTHING =
  /\b(?:verify(?: all| dims?| dimensions?| size| opening| width| height)*(?: in (?:the )?field| on site| at site| w\/? ?field)?|field[- ]verify|field[- ]measured?|v\.?i\.?f\.?|to be painted|paint(?:ed)?(?: grade| white| finish| to match)?|primed?(?: only)?|pre-?primed|stain(?:ed)?(?: grade)?|clear coat|egress|tempered(?: glass)?|safety glass|obscure(?: glass)?|low-?e|insulated glass|operable|fixed(?: glass| lite| unit)?|awning|casement|double[- ]hung|single[- ]hung|typ(?:ical)?\.?(?! of)|see (?:elev(?:ation)?s?|plans?|arch(?:itectural)?(?: dwgs?| drawings?)?|dwgs?|drawings?|details?|sheet)\.?(?: [a-z]?-?\d[\w./-]*)*|above (?:the )?(?:(?:front|entry|main|rear|side) )?(?:door|entry|stairs?|tub|sink|fireplace)|rough openings? only|(?:rough )?opening by (?:framer|gc|contractor)|by framer)/gi;

export const REMARK_MEANINGS: readonly RemarkMeaning[] = [
  {
    pattern:
      /\b(?:both|two|2) (?:sides|faces)\b|\b(?:both|two|2) (?:side|face)\b(?![ -]*(?:legs?|lites?|lights?|jambs?|panels?|windows?|units?|pieces?|pcs))|\bint(?:erior)?\.? ?(?:&|and|\+|\/) ?ext(?:erior)?\b\.?|\bext(?:erior)?\.? ?(?:&|and|\+|\/) ?int(?:erior)?\b\.?|\binside (?:&|and) out(?:side)?\b|\bea(?:ch|\.)? side\b/i,
    means: 'cased on both sides',
    choices: () => [
      { label: 'cased on both sides', set: { sides: '2' } },
      { label: 'one side only', set: { sides: '1' } },
    ],
  },
  {
    pattern: /\b(?:one|1|single) side\b|\b(?:int(?:erior)?|ext(?:erior)?|inside|outside|room)\.? (?:side )?only\b/i,
    means: 'cased on one side',
    choices: () => [
      { label: 'one side only', set: { sides: '1' } },
      { label: 'cased on both sides', set: { sides: '2' } },
    ],
  },
  {
    pattern:
      /\b(?:(?:extension|ext\.?) jambs?|jambs? (?:ext(?:ension)?s?|liners?)|jamb(?:s|liners?)?|brick ?mo?u?ld(?:ing)?s?|(?:window ?)?sills?|sub-?sills?)\b(?! (?:height|ht|line|depth|reveal))/i,
    means:
      'jambs, jamb extensions, sills or brick molding, which stand in the wall and are not run here: the price is of the casing alone',
    choices: () => [{ label: 'priced as listed, the casing alone' }, LEAVE_OUT],
  },
  {
    pattern:
      /\b(?:(?:curved?|bow(?:ed)?|radius(?:ed)?|bent|arched|round) (?:in|on) plan|(?:radius(?:ed)?|curved|bowed|round|bent) wall|(?:in|on) (?:a )?(?:radius(?:ed)?|curved|bowed|round) wall|plan radius|(?:bow|bay) windows?)\b/i,
    means: 'a curve in plan, seen from above, which is not run here: the price is of a casing flat on its wall',
    choices: () => [LEAVE_OUT, { label: 'priced as listed, flat on its wall' }],
  },
  {
    pattern: NAMES_AN_EXTRA,
    means: 'an extra that the shop sells by the piece',
    choices: ({ input }) => extrasChoices(input),
  },
  {
    pattern: NAMES_FOOTAGE,
    means: 'straight molding of the same profile besides',
    choices: (match) => footageChoices(match),
  },
  {
    pattern: /\b(no|without|w\/o) (?:side )?legs?\b|\b(?:head|arch)(?: casing)? only\b/i,
    means: 'a head without legs',
    choices: () => [{ label: 'no legs', set: { leg: '0' } }, AS_LISTED],
  },
  {
    pattern:
      /\b(?:no|without|w\/o) (?:casing|trim|mo?u?lding)\b|\bdry ?wall (?:return|wrap)\w*|\bnot cased\b|\buncased\b/i,
    means: 'nothing to make',
    choices: leaveFirst,
  },
  {
    pattern: /\bmatch(?:es|ing)? (?:the )?exist(?:ing|\.)?\b|\bmatch (?:profile|adjacent|original)\b/i,
    means: 'a profile that is not in this list',
    choices: keepFirst,
  },
  {
    pattern:
      /\bexist(?:ing|g|\.)?(?= |$|[,;.)-])(?! (?:conditions?|opening to be verified))|\be\.?t\.?r\b\.?|\bto remain\b|\bre-?use(?:d)?\b|\bsalvaged?\b/i,
    means: 'it is there already',
    choices: leaveFirst,
  },
  {
    pattern:
      /\b(?:hold|on hold|cancel(?:l?ed)?|deleted?|omit(?:ted)?|void(?:ed)?|removed?|demo(?:lish(?:ed)?)?|by (?:the )?(?:owner|others?|gc|g\.c\.|mfr|manufacturer|supplier|window supplier|door supplier)|n\.?i\.?c\b\.?|not (?:in (?:contract|scope|this)|used|required|req'?d|needed)|furnished by|supplied by|provided by)\b/i,
    means: 'not for us to make',
    choices: leaveFirst,
  },
  {
    pattern:
      /\b((?:[a-z]+[ -]){0,2}[a-z]+)\s+(?:head )?(?:per|by|in|as per) (?:the )?(?:addend\w*|add\.?|asi|rfi|ccd|bulletin|rev(?:ision)?|change order|c\.?o\.?)\b/i,
    means: 'another head',
    choices: (match) => {
      const words = (match[1] ?? '').replace(/^(?:changed?|revised|now|to|is|be|made)(?: to)? /i, '');
      const head = readHead(words);
      return head.ok ? [{ label: `${head.value} head`, set: { head: head.value } }, AS_LISTED] : null;
    },
  },
  {
    pattern: new RegExp(
      String.raw`\b(?:changed?|revised|now|make|should be|is|use)(?: to| into)?(?: an?)? ((?:${HEAD_SHAPES.join('|')}|flat|square|eyebrow|gothic|ellipse))(?: head| top| arch)?\b`,
      'i',
    ),
    means: 'another head',
    choices: (match) => {
      const head = readHead(match[1] ?? '');
      return head.ok ? [{ label: `${head.value} head`, set: { head: head.value } }, AS_LISTED] : null;
    },
  },
  {
    pattern:
      /\b(?:add(?:itive)?|deduct(?:ive)?|bid)[ -]?alt\w*\b\.?|\balt(?:ernate|\.)?(?: (?:no\.?|#|bid)? ?\d+)?(?= |$|[,;.)#])|\boption(?:al)?\b|\bfuture\b|\ballowance\b|\bif (?:required|needed|selected|approved)\b|\bphase (?:2|3|ii|iii|two)\b/i,
    means: 'not in the base job',
    choices: leaveFirst,
  },
  {
    pattern: new RegExp(
      String.raw`\(\s*(\d{1,3})\s*\)\s*(?:req'?d|required|ea|each|pcs?|total|thus|units?|openings?|sets?|of these|alike)?\.?|\b(?:qty|quantity|provide|furnish|need|order|make)\.?:? ?(\d{1,3})\b(?! ?(?:"|mm|in\b|cm|'|-|\/|ft))|(?:^|[\s,;])[x×] ?(\d{1,3})\b(?! ?(?:"|mm|in\b|cm|'|-|\/|ft|x))|\btyp(?:ical|\.)? of (\d{1,3}|two|three|four|five|six)\b|(?<![\d/.]|\d )\b(\d{1,3}|two|three|four|five|six|eight|ten) ?(?:req'?d|required|ea|each|pcs|pieces|total|thus|alike|units|openings|of these|places|locations|off)\b`,
      'i',
    ),
    means: 'another quantity',
    choices: (match) => {
      const said = match.slice(1).find((one) => one !== undefined) ?? '';
      const count = COUNT_WORDS[said.toLowerCase()] ?? Number(said);
      return count >= 1
        ? [{ label: `quantity ${count}`, set: { quantity: String(count) } }, { label: 'quantity as listed' }]
        : null;
    },
  },
  {
    pattern:
      /\bmull?(?:ed|ion|ions|s)?\b|\bgang(?:ed)?\b|\btwins?\b|\btrip(?:le|let)\b|\bpair(?:ed|s)?\b|\bside by side\b|\bover (?:the )?(?:pair|door pair)\b|\bstacked\b|\bcombin(?:ed|ation)\b|\bcontinuous\b|\bcommon head\b/i,
    means: 'units that stand together, with a head each as listed, or with one head over all',
    choices: ({ input }) => togetherChoices(input),
  },
  {
    pattern:
      /\bcorner blocks?\b|\bcorbels?\b|\bback ?bands?\b|\bpediments?\b|\bcross ?heads?\b|\bdentils?\b|\bcap mo?u?lding\b|\bfluted\b|\bpilasters?\b|\bentablature\b|\baprons?\b|\bstools?\b/i,
    means: 'an extra that this list does not price',
    choices: () => [{ label: 'priced without it' }, LEAVE_OUT],
  },
  {
    pattern: new RegExp(String.raw`\brise (?:is |of |= ?|: ?)?(${LENGTH})|(${LENGTH}) (?:arch )?rise\b`, 'i'),
    means: 'the rise',
    choices: (match) => {
      const length = (match[1] ?? match[2] ?? '').trim();
      return [{ label: `rise ${length}`, set: { rise: length } }, { label: 'not the rise' }];
    },
  },
  {
    pattern: new RegExp(
      String.raw`\b(?:rad(?:ius)?\.?|r) ?(?:is |of |[=:] ?)?(${LENGTH})|(${LENGTH}) ?(?:rad(?:ius)?\b\.?|r\b\.?)`,
      'i',
    ),
    means: 'the radius',
    choices: (match) => {
      const length = (match[1] ?? match[2] ?? '').trim();
      return [{ label: `radius ${length}`, set: { radius: length } }, { label: 'not the radius' }];
    },
  },
  {
    pattern: new RegExp(
      String.raw`(${LENGTH}) (?:wide |flat )?(?:casing|trim|mo?u?lding)\b|\b(?:casing|trim)(?: width)? (?:is |of |= ?|: ?)?(${LENGTH})`,
      'i',
    ),
    means: 'another casing width',
    choices: (match) => {
      const length = (match[1] ?? match[2] ?? '').trim();
      return [{ label: `casing ${length}`, set: { face: length } }, { label: 'casing as listed' }];
    },
  },
  {
    pattern: new RegExp(String.raw`\b(${WOODS})\b(?! (?:st|street|ave|room|hall|floor))`, 'i'),
    means: 'another wood',
    choices: (match) => {
      const wood = (match[1] ?? '').toLowerCase();
      return [{ label: `in ${wood}`, set: { species: capital(wood) } }, { label: 'wood as listed' }];
    },
  },
  {
    pattern:
      /\b(?:tbd|to be determined|t\.b\.d\.|unknown|not known|not sure|confirm(?! in field)|check with|ask|rfi|pending|awaiting|subject to|as selected|approx(?:imate|\.)?)\b|\?/i,
    means: 'something that is not settled',
    choices: keepFirst,
  },
  {
    pattern:
      /\baddend(?:um|a)\b|\basi\b|\bbulletin\b|\brevis(?:ed|ion)\b|\bchang(?:ed?|ing)\b|\bsuperse?ded\b|\breplac(?:ed?|es|ing)\b|\binstead\b|\bswap(?:ped)?\b/i,
    means: 'a change of what is listed',
    choices: keepFirst,
  },
  {
    pattern:
      /\b(?:same as|similar to|sim\.? to|like|match(?:es)?|opposite(?: hand)?(?: of)?|opp\.?(?: hand)?|mirror(?:ed)?|see(?: also)?) (?:mark |window |opening |door |unit )?[a-z]{0,3}-?\d+\w?\b/i,
    means: 'what another row says',
    choices: keepFirst,
  },
  {
    pattern:
      /\b(?:revers(?:e|ed) (?:curve|arch)|serpentine|ogee|parabol\w*|catenary|raked?|unequal|asymmetric\w*|off[- ]cent(?:er|re)|sloped?|one leg|short leg|long leg|legs? differ|different legs?|skirt|horseshoe|inverted|curved in plan|bow(?:ed)?|bent|radius wall|curved wall)\b/i,
    means: 'another shape than the columns say',
    choices: keepFirst,
  },
  {
    pattern:
      /\b(?:wider|narrower|thicker|heavier|larger|smaller|taller|different|special|custom|non-?standard|oversized?|extra|double|only|except|not|no|plus|less|minus|instead of|excl(?:ud(?:e|ed|ing|es))?|incl(?:ud(?:e|ed|ing|es))?|w\/|with|without|w\/o|add|both|side[- ]?(?:lites?|lights?))\b/i,
    means: 'something of what is bought',
    choices: keepFirst,
  },
  {
    pattern: /\d[\d\s./-]*(?:"|″|”|''|'(?!s)|\bin\b\.?|inch|mm\b|cm\b|ft\b)|\d+ ?[x×] ?\d+/i,
    means: 'a figure that no column gives',
    choices: keepFirst,
  },
  {
    pattern:
      /\b(?:casings?|trim|mo?u?ldings?|legs?|heads?|arch(?:ed|es)?|radius|rise|spring(?:line)?|jambs? ext\w*|profile|knife|species|quantity|qty)\b/i,
    means: 'something of the casing',
    choices: keepFirst,
  },
];
