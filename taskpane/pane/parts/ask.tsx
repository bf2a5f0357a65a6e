import { useEffect, useId, useRef } from 'preact/hooks';

interface AskProps {
  readonly title: string;
  readonly about: string;
  readonly yes: string;
  readonly no: string;
  readonly onYes: () => void;
  readonly onNo: () => void;
}

/**
 * A question in the pane, before anything is written over or changed for good. Escape is no. Then the focus
 * goes back to where it was; a button that stands aside for the question needs an `id` for that.
 */
export function Ask({ title, about, yes, no, onYes, onNo }: AskProps) {
  const id = useId();
  const refusal = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    // The harmless answer has the focus.
    const before = document.activeElement;
    refusal.current?.focus();
    return () => {
      if (!(before instanceof HTMLElement)) return;
      // The button that led here may have made room for the question, and stands there again at the next drawing.
      requestAnimationFrame(() => {
        if (document.activeElement !== document.body) return;
        (before.isConnected ? before : document.getElementById(before.id))?.focus();
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
