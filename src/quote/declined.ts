import { cellText } from '../schedule/cell';
import type { CellValue } from '../schedule/opening';

const DECLINED =
  /(?:^|[^a-z])(n\.?i\.?c\.?|not in (?:contract|quote|bid|scope|our scope)|by others|by (?:owner|gc|builder|contractor|customer)|(?:furnished|supplied|provided) by (?:others|owner|gc|builder)|no[ -]?(?:bid|quote)|not (?:quoted|bid|included|priced|in scope)|decline[ds]?(?: to (?:bid|quote))?|unable to (?:bid|quote)|can(?:no|')?t (?:bid|quote|supply|make)|to follow(?: later)?|regrets?(?:,? (?:we )?can(?:no|')?t (?:run|make|bid|quote))?|excluded?|exclusion|omit(?:ted)?|n\.?\/?b\.?|n\.?\/?q\.?)(?![a-z])/i;

/** The words by which a line says that its opening isn't quoted; null: it doesn't. "Legs not included" is said of the legs. */
export function declines(cells: readonly (CellValue | undefined)[]): string | null {
  for (const cell of cells) {
    if (typeof cell !== 'string') continue;
    const text = cellText(cell);
    const found = DECLINED.exec(text);
    if (found === null) continue;
    const before = text.slice(0, found.index).trim();
    const after = text.slice(found.index + found[0].length).trim();
    // Alone in its cell, or behind a dash or in brackets; otherwise a part of the piece is meant.
    const alone =
      before === '' ||
      /[-–—:;,(]$/.test(before) ||
      /^(?:nic|n\.i\.c\.|by others|no bid|not quoted|no quote)/i.test(found[1]!);
    const ofPart =
      /\b(?:legs?|install\w*|delivery|freight|tax|finish\w*|paint\w*|stain\w*|hardware|sill|apron|keystones?|rosettes?|plinths?|glass|jambs?|labor|returns?)\b[^;]*$/i.test(
        before,
      ) || /^(?:install|delivery|freight|tax|finish|paint|legs?\b|stain|sill)/i.test(after);
    if (alone && !ofPart) return found[1]!.trim();
  }
  return null;
}
