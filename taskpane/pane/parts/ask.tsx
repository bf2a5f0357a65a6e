import { useEffect, useId, useRef } from 'preact/hooks';

interface AskProps {
  /** The id of the button that the question takes the place of; left out where it stays. */
  readonly askedBy?: string;
  readonly title: string;
  readonly about: string;
  readonly yes: string;
  readonly no: string;
  readonly onYes: () => void;
  readonly onNo: () => void;
}

/**
 * A question in the pane, before anything is written over or changed for good. Escape is no. Then the focus goes back to
 * what led here.
 */
export function Ask({ askedBy, title, about, yes, no, onYes, onNo }: AskProps) {
  const id = useId();
  const refusal = useRef<HTMLButtonElement>(null);
  const before = useRef(document.activeElement);
  useEffect(() => {
    // The harmless answer has the focus.
    refusal.current?.focus();
    return () => {
      // A button that made room for the question stands there again at the next drawing.
      requestAnimationFrame(() => {
        if (document.activeElement !== document.body) return;
        const back = askedBy === undefined ? before.current : document.getElementById(askedBy);
        if (back instanceof HTMLElement) back.focus();
      });
    };
  }, []);
  return (
    <section
      class="card ask"
      role="alertdialog"
      aria-labelledby={`${id}-title`}
      aria-describedby={`${id}-about`}
      onKeyDown={(event) => {
        if (event.key === 'Escape') onNo();
      }}
    >
      <h2 id={`${id}-title`}>{title}</h2>
      <p id={`${id}-about`} class="holds">
        {about}
      </p>
      <div class="pair">
        <button type="button" class="main" onClick={onYes}>
          {yes}
        </button>
        <button type="button" ref={refusal} onClick={onNo}>
          {no}
        </button>
      </div>
    </section>
  );
}
