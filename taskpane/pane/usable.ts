/** What the page's own clock is told when the pane can be used, for measuring. */
export const USABLE = 'archwright pane usable';
