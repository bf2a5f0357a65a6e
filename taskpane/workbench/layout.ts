const NARROWEST = 320;
const WIDEST = 760;
/** With it a page of 1280 pixels shows a Takeoff's first eleven columns. */
const USUAL = 330;
const ARROW_STEP = 20;

/** Narrower, and there is room for the sheet or the pane, not for both (workbench.css). */
const NARROW = '(max-width: 860px)';

/**
 * The pane beside the grid: its width by pointer and by arrow keys, showing and hiding it, F6 round the page. Gives the way
 * to bring the sheet into sight.
 */
export function arrangeLayout(
  grid: HTMLElement,
  pane: HTMLElement,
  divider: HTMLElement,
  toggle: HTMLButtonElement,
  bar: HTMLElement,
): () => void {
  let width = USUAL;
  const setWidth = (wanted: number) => {
    width = Math.round(Math.min(WIDEST, Math.max(NARROWEST, wanted)));
    document.documentElement.style.setProperty('--wb-pane-width', `${width}px`);
    divider.setAttribute('aria-valuenow', String(width));
  };
  divider.setAttribute('aria-valuemin', String(NARROWEST));
  divider.setAttribute('aria-valuemax', String(WIDEST));
  setWidth(USUAL);

  divider.addEventListener('pointerdown', (down) => {
    divider.setPointerCapture(down.pointerId);
    const startWidth = width;
    const move = (event: PointerEvent) => setWidth(startWidth + down.clientX - event.clientX);
    divider.addEventListener('pointermove', move);
    divider.addEventListener('lostpointercapture', () => divider.removeEventListener('pointermove', move), {
      once: true,
    });
  });
  divider.addEventListener('keydown', (event) => {
    const step = { ArrowLeft: ARROW_STEP, ArrowRight: -ARROW_STEP }[event.key];
    if (step === undefined) return;
    event.preventDefault();
    setWidth(width + step);
  });

  const showPane = (shown: boolean) => {
    document.body.classList.toggle('wb-no-pane', !shown);
    toggle.setAttribute('aria-expanded', String(shown));
    // Where there is room for one of them only, putting the pane away shows the sheet.
    toggle.textContent = shown ? 'Hide pane' : 'Show pane';
  };
  toggle.addEventListener('click', () => showPane(document.body.classList.contains('wb-no-pane')));

  const showSheet = () => {
    if (matchMedia(NARROW).matches) showPane(false);
  };
  const stops: readonly (readonly [root: HTMLElement, go: () => void])[] = [
    [
      grid,
      () => {
        showSheet();
        grid.querySelector<HTMLElement>('[contenteditable="true"]')?.focus();
      },
    ],
    [
      pane,
      () => {
        showPane(true);
        pane.focus();
      },
    ],
    [bar, () => bar.querySelector<HTMLElement>('.wb-tools button')?.focus()],
  ];

  // Before the grid sees the key.
  window.addEventListener(
    'keydown',
    (event) => {
      if (event.key !== 'F6') return;
      event.preventDefault();
      event.stopPropagation();
      const at = Math.max(
        0,
        stops.findIndex(([root]) => root.contains(document.activeElement)),
      );
      stops[(at + (event.shiftKey ? stops.length - 1 : 1)) % stops.length]![1]();
    },
    { capture: true },
  );
  return showSheet;
}
