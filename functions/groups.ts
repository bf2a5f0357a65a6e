/** The files of worksheet functions, in the order of the reference page. */
export const GROUPS = [
  { file: 'arc', title: 'The arc' },
  { file: 'head', title: 'The head of an opening' },
  { file: 'blank', title: 'The glued blank' },
  { file: 'machine', title: 'The machine' },
  { file: 'stock', title: 'Stock' },
  { file: 'opening', title: 'A row of the takeoff' },
  { file: 'text', title: 'Text and checking' },
] as const;
