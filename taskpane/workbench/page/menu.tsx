import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

interface MenuProps {
  readonly label: string;
  readonly onOpen?: () => void;
  readonly children: ComponentChildren;
}

/** A button that opens a list of buttons. Arrows go through it, Escape and a click elsewhere close it. */
export function Menu({ label, onOpen, children }: MenuProps) {
  const [open, setOpen] = useState(false);
  const root = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  const items = () => [...(root.current?.querySelectorAll<HTMLButtonElement>('.wb-menu button') ?? [])];
  useEffect(() => {
    if (!open) return;
    items()[0]?.focus();
    const away = (event: Event) => {
      if (!root.current?.contains(event.target as Node)) setOpen(false);
    };
    // Before the grid takes the click for itself.
    addEventListener('pointerdown', away, true);
    return () => removeEventListener('pointerdown', away, true);
  }, [open]);
  const step = (by: number) => {
    const all = items();
    const at = all.indexOf(document.activeElement as HTMLButtonElement);
    all[(at + by + all.length) % all.length]?.focus();
  };
  return (
    <div
      class="wb-drop"
      ref={root}
      onKeyDown={(event) => {
        if (!open) return;
        if (event.key === 'Escape') {
          setOpen(false);
          button.current?.focus();
        } else if (event.key === 'ArrowDown') step(1);
        else if (event.key === 'ArrowUp') step(-1);
        else return;
        event.preventDefault();
        event.stopPropagation();
      }}
    >
      <button
        type="button"
        ref={button}
        aria-expanded={open}
        onClick={() => {
          if (!open) onOpen?.();
          setOpen(!open);
        }}
      >
        {label} <span aria-hidden="true">▾</span>
      </button>
      {open && (
        <div
          class="wb-menu"
          onClick={(event) => {
            if (!(event.target as Element).closest('button')) return;
            setOpen(false);
            button.current?.focus();
          }}
        >
          {children}
        </div>
      )}
    </div>
  );
}

interface ItemProps {
  readonly keys?: string;
  readonly act: () => void;
  readonly children: ComponentChildren;
}

export function MenuItem({ keys, act, children }: ItemProps) {
  return (
    <button type="button" onClick={act}>
      <span>{children}</span>
      {keys !== undefined && <kbd>{keys}</kbd>}
    </button>
  );
}
