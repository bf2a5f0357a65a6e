import { useId } from 'preact/hooks';

interface FilePickProps {
  readonly label: string;
  readonly accept: string;
  readonly take: (file: File) => void;
}

/** The browser's own file dialog behind a button of ours; the input keeps the focus and the name. */
export function FilePick({ label, accept, take }: FilePickProps) {
  const id = useId();
  return (
    <span class="file-pick">
      <input
        id={id}
        type="file"
        accept={accept}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          if (file) take(file);
          // The same file chosen again must be read again.
          event.currentTarget.value = '';
        }}
      />
      <label class="button" for={id}>
        {label}
      </label>
    </span>
  );
}
