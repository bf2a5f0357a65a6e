import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';

interface DropCardProps {
  /** Of the heading that names the card. */
  readonly labelledBy: string;
  readonly take: (file: File) => void;
  readonly children: ComponentChildren;
}

/** A card on which a file may be dropped; it shows when one is held over it. */
export function DropCard({ labelledBy, take, children }: DropCardProps) {
  const [over, setOver] = useState(false);
  return (
    <section
      class={`card drop${over ? ' over' : ''}`}
      aria-labelledby={labelledBy}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setOver(false);
        const file = event.dataTransfer?.files[0];
        if (file) take(file);
      }}
    >
      {children}
    </section>
  );
}
