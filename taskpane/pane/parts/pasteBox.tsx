import { useState } from 'preact/hooks';

interface PasteBoxProps {
  readonly id: string;
  readonly yes: string;
  readonly take: (text: string) => Promise<void>;
}

/** A box for rows on the clipboard, and the button that reads them. */
export function PasteBox({ id, yes, take }: PasteBoxProps) {
  const [text, setText] = useState('');
  return (
    <>
      <label for={id}>Paste the rows here, with their headings</label>
      <textarea
        id={id}
        rows={3}
        spellcheck={false}
        value={text}
        onInput={(event) => setText(event.currentTarget.value)}
        onPaste={(event) => {
          const pasted = event.clipboardData?.getData('text/plain');
          // Into an empty box at once: typing thousands of rows into it, as a browser does, takes seconds.
          if (text !== '' || !pasted) return;
          event.preventDefault();
          setText(pasted);
        }}
      />
      <button type="button" disabled={text.trim() === ''} onClick={() => take(text)}>
        {yes}
      </button>
    </>
  );
}
