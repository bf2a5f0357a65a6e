/**
 * The grid library draws a bar of sheets, zoom and messages of its own, parts of it without names or under roles that are
 * none. Each line says how one part is found and what it is given; done again whenever the library draws anew.
 */
const PARTS: readonly (readonly [selector: string, give: (part: Element, at: number) => void])[] = [
  // Keys go to the cell's own field; a canvas is no stop of Tab.
  ['canvas[tabindex]', (part) => set(part, 'tabindex', '-1')],
  ['footer > section > div:first-child > div:first-child > button', named('Add a sheet')],
  // The menu hangs on a box round the button: the button says so, the box nothing.
  ['footer div[data-slot="dropdown-menu-trigger"]', moveToButton],
  ['footer div[data-slot="dropdown-menu-trigger"] > button', named('All sheets')],
  ['footer button[data-u-comp="sheet-bar-append-button"]:not([aria-label])', scrolls],
  ['button[data-u-command="sheet.command.toggle-gridlines"]', named('Lines between cells')],
  ['footer [role="track"] > a', named('Zoom 100%')],
  ['footer [role="track"] > button', named('Zoom, drag it')],
  ['footer [role="handle"]', (part) => part.removeAttribute('role')],
  ['footer button:has(> .univerjs-icon-reduce-icon)', named('Zoom out')],
  ['footer button[data-u-comp="button"]:has(> .univerjs-icon-increase-icon)', named('Zoom in')],
  ['footer [role="track"]', (part) => part.removeAttribute('role')],
  ['section[aria-live][aria-label^="Notifications"]', (part, at) => set(part, 'aria-label', `Notifications ${at + 1}`)],
];

/** Names the library's parts under `root`, now and as they change. */
export function nameLibraryParts(root: HTMLElement): void {
  let asked = false;
  const name = () => {
    asked = false;
    for (const [selector, give] of PARTS) root.querySelectorAll(selector).forEach(give);
  };
  new MutationObserver(() => {
    if (asked) return;
    asked = true;
    requestAnimationFrame(name);
  }).observe(root, { subtree: true, childList: true, attributeFilter: ['role', 'tabindex', 'aria-expanded'] });
  name();
}

function named(name: string): (part: Element) => void {
  return (part) => set(part, 'aria-label', name);
}

function scrolls(part: Element, at: number): void {
  set(part, 'aria-label', at === 0 ? 'Sheets to the left' : 'Sheets to the right');
}

function moveToButton(part: Element): void {
  const button = part.querySelector('button');
  for (const attribute of ['aria-haspopup', 'aria-expanded']) {
    const value = part.getAttribute(attribute);
    if (value === null) continue;
    part.removeAttribute(attribute);
    if (button) set(button, attribute, value);
  }
}

/** Only where it differs: a change asks for another look. */
function set(part: Element, attribute: string, value: string): void {
  if (part.getAttribute(attribute) !== value) part.setAttribute(attribute, value);
}
