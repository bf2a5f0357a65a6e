import type { LineCheck } from '../../check/quote/checkLine';
import { is, type Finding } from '../../check/quote/finding';
import { given, type Expression } from '../../check/rules/expression';
import {
  curveRule,
  EXTENSION_RULE,
  isNear,
  PRICE_RULE,
  quantityRule,
  type LineFigures,
} from '../../check/rules/lineRules';
import { cantTellOf, reasonOf, verdictOf } from '../../check/rules/verdict';
import type { OpeningTakeoff, Takeoff } from '../../takeoff/takeoff';
import { figure, written, type Content } from './content';
import { wrongCurve, type Compared } from './formulas';

export type AllSays = Readonly<Record<Compared, Content<string>>>;
type Shop = Readonly<Record<'tolerance' | 'priceBand', number | null>>;

/**
 * What is said of each figure of a line, as the check found it: with the formula of its rule, where the rule says the same of the cells
 * beside it, so that an edit of the quote or of the takeoff judges it again.
 */
export class Comparisons {
  /** The comparisons are formulas; otherwise what was found stands as written. */
  readonly live: boolean;

  constructor(
    private readonly check: LineCheck,
    private readonly opening: OpeningTakeoff | null,
    private readonly figures: LineFigures,
    private readonly takeoff: Takeoff,
    private readonly plain: boolean,
  ) {
    this.live = opening !== null && check.count !== null;
  }

  all(): AllSays {
    return {
      openingSays: written(this.ofOpening()),
      quantitySays: this.quantity(),
      radiusSays: this.radius(),
      lengthSays: this.length(),
      extensionSays: this.extension(),
      priceSays: this.price(),
    };
  }

  private quantity(): Content<string> {
    const isLive = this.live && !this.unread('quantity');
    return this.ruled('quantity', isLive ? quantityRule(this.check.count!.by) : null);
  }

  private radius(): Content<string> {
    // Heads of several radii are judged against each of them, which a formula of this length can't.
    return this.live && !this.unread('radius') && !this.opening?.own?.haunch
      ? this.curve('radius')
      : this.ruled('radius', null);
  }

  private length(): Content<string> {
    const { line } = this.check;
    const { ourLength } = this.figures;
    const [finding] = this.found('length');
    const open = finding?.verdict === "can't tell" && !finding.notGiven;
    const runs = line.lengthOf === 'with legs' || (finding?.verdict === 'agrees' && finding.right !== ourLength);
    const together = runs || (line.lengthOf === 'all pieces' && ourLength !== null && line.length !== null);
    return this.live && !this.unread('length') && !open && !together
      ? this.curve('length')
      : this.ruled('length', null);
  }

  private curve(about: 'radius' | 'length'): Content<string> {
    const { unit, tolerance } = this.takeoff.standards;
    const [finding] = this.found(about);
    const byFunction = about === 'length' && !this.plain && unit === 'in' && this.check.line.lengthOf === 'outside';
    const named =
      finding?.verdict === 'differs'
        ? { quoted: finding.quoted!, right: finding.right!, tolerance, text: finding.words }
        : null;
    const openings = byFunction ? this.takeoff.openings.length : null;
    const wrong = given(finding?.words ?? '', wrongCurve(about, named, unit, openings));
    const [quoted, right] =
      about === 'radius'
        ? [this.figures.radius, this.figures.ourRadius]
        : [this.figures.length, this.figures.ourLength];
    const isAsRuled =
      quoted === null || right === null || isNear(quoted, right, tolerance) === (finding?.verdict === 'agrees');
    return this.ruled(about, isAsRuled ? curveRule(about, wrong) : null);
  }

  private extension(): Content<string> {
    const { line } = this.check;
    // It compares the quote's own figures, so it needs no opening.
    const [finding] = this.found('extension');
    const open = finding?.verdict === "can't tell" && !finding.notGiven;
    const isLive =
      line.by !== 'lot' &&
      line.reckoning === null &&
      !open &&
      line.problems.every(({ field }) => field === 'radius' || field === 'length');
    return this.ruled('extension', isLive ? EXTENSION_RULE : null);
  }

  private price(): Content<string> {
    const isLive = this.live && !this.unread('unitPrice') && this.check.line.footPrice === null;
    return this.ruled('unit price', isLive ? PRICE_RULE : null);
  }

  /** What was found of a figure, live where its rule says the same of the row's cells. */
  private ruled(about: Finding['about'], rule: Expression<string, LineFigures & Shop> | null): Content<string> {
    const found = this.found(about);
    const said = this.words(found);
    const { tolerance, priceBand } = this.takeoff.standards;
    return rule !== null && found.length <= 1 && rule.of({ ...this.figures, tolerance, priceBand }) === said
      ? figure(said, rule.formula)
      : written(said);
  }

  /** Of several findings of one figure those that differ, else those that leave it open. */
  private words(found: readonly Finding[]): string {
    const of = (is: Finding['verdict']) => found.filter(({ verdict }) => verdict === is).map(({ words }) => words);
    const [wrong, open] = [of('differs'), of("can't tell").filter((words) => words !== '')];
    if (wrong.length > 0) return [...new Set(wrong)].join('; ');
    if (open.length === 0) return found.some(({ verdict }) => verdict === 'agrees') ? 'agrees' : '';
    return open.length === 1 ? open[0]! : cantTellOf(open.map(reasonOf).join('; '));
  }

  private ofOpening(): string {
    const found = this.check.findings.filter(({ about }) => !is(about, 'ownColumn'));
    const judged = found.filter(({ about, verdict }) => verdict !== 'agrees' || is(about, 'judged'));
    const words = this.words(judged);
    if (verdictOf(words) !== 'differs') return words;
    const open = judged.filter(({ verdict }) => verdict === "can't tell").map((one) => one.words);
    return [words, ...open.filter((each) => each !== '')].join('; ');
  }

  private found(about: Finding['about']): readonly Finding[] {
    return this.check.findings.filter((one) => one.about === about);
  }

  /** The cell holds something that is no figure. */
  private unread(field: LineCheck['line']['problems'][number]['field']): boolean {
    return this.check.line.problems.some((problem) => problem.field === field);
  }
}
