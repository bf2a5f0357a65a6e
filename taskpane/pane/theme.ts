import type { OfficeTheme } from './deeds/bench';

/** Light or dark by the host program's colors, else by the system; the pane's own colors follow in the style sheet. */
export function followTheme(root: HTMLElement, theme: OfficeTheme | undefined): () => void {
  if (theme) {
    root.dataset['theme'] = isDark(theme.bodyBackgroundColor) ? 'dark' : 'light';
    // The pane sits inside the program's own frame: its ground must be the same color.
    root.style.setProperty('--ground', theme.bodyBackgroundColor);
    return () => undefined;
  }
  const dark = window.matchMedia('(prefers-color-scheme: dark)');
  const set = () => {
    root.dataset['theme'] = dark.matches ? 'dark' : 'light';
  };
  set();
  dark.addEventListener('change', set);
  return () => dark.removeEventListener('change', set);
}

/** By relative luminance of `#rrggbb`; a color that can't be read counts as light. */
export function isDark(color: string): boolean {
  const found = /^#?([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})/i.exec(color.trim());
  if (!found) return false;
  const [red = 1, green = 1, blue = 1] = found.slice(1, 4).map((part) => {
    const share = parseInt(part, 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue < 0.18;
}
