import { useEffect, useRef, useState } from 'preact/hooks';
import type { TextFile } from '../state';

/** Files as text, where the host program saves none: to be copied into a file of that name. */
export function ShownFiles({ files, close }: { readonly files: readonly TextFile[]; readonly close: () => void }) {
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => title.current?.focus(), [files]);
  return (
    <section class="card" aria-labelledby="shown-files">
      <h2 id="shown-files" ref={title} tabIndex={-1}>
        {files.length === 1 ? 'Copy this file' : `Copy these ${files.length} files`}
      </h2>
      <p>
        Excel on this computer lets an add-in save no files. Copy each text into a new file in a plain text editor and
        save it under its name.
      </p>
      {files.map((file) => (
        <ShownFile key={file.name} file={file} />
      ))}
      <button type="button" onClick={close}>
        Done
      </button>
    </section>
  );
}

function ShownFile({ file }: { readonly file: TextFile }) {
  const text = useRef<HTMLTextAreaElement>(null);
  const [said, setSaid] = useState('');
  const copy = async () => {
    text.current?.select();
    try {
      await navigator.clipboard.writeText(file.content);
      setSaid('Copied.');
    } catch {
      setSaid('It is selected: press Cmd+C.');
    }
  };
  return (
    <div>
      <label>
        {file.name}
        <textarea rows={3} readOnly spellcheck={false} ref={text} value={file.content} />
      </label>
      <button type="button" onClick={() => void copy()}>
        Copy<span class="hidden"> {file.name}</span>
      </button>{' '}
      <span role="status">{said}</span>
    </div>
  );
}
