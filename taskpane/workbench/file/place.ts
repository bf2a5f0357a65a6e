import { ok, refuse, type Result } from '../../../src/result';

/** Where a job is written to. */
export interface Place {
  /** The file's name there; null where the browser doesn't tell. */
  readonly name: string | null;
  write(bytes: Uint8Array): Promise<Result<void>>;
}

const TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

interface FileHandle {
  readonly name: string;
  createWritable(): Promise<{ write(bytes: Uint8Array): Promise<void>; close(): Promise<void> }>;
}

type Picker = (options: object) => Promise<FileHandle>;

/** A file that the user picks, where the browser lets a page write to one; else its downloads. Null: the user thought better of it. */
export async function pickPlace(name: string): Promise<Place | null> {
  const picker = (globalThis as { showSaveFilePicker?: Picker }).showSaveFilePicker;
  if (picker === undefined) return downloads(name);
  try {
    const handle = await picker({
      suggestedName: name,
      types: [{ description: 'Workbook', accept: { [TYPE]: ['.xlsx'] } }],
    });
    return { name: handle.name, write: (bytes) => writeTo(handle, bytes) };
  } catch (thrown) {
    // Anything but a no of the user's: the browser gives no files to this page.
    return thrown instanceof DOMException && thrown.name === 'AbortError' ? null : downloads(name);
  }
}

async function writeTo(handle: FileHandle, bytes: Uint8Array): Promise<Result<void>> {
  try {
    const file = await handle.createWritable();
    await file.write(bytes);
    await file.close();
    return ok(undefined);
  } catch (thrown) {
    const why = thrown instanceof Error ? thrown.message : String(thrown);
    return refuse(`${handle.name} could not be written: ${why}. Save a copy under another name.`);
  }
}

function downloads(name: string): Place {
  return {
    name: null,
    async write(bytes) {
      const link = document.createElement('a');
      link.href = URL.createObjectURL(new Blob([bytes as BlobPart], { type: TYPE }));
      link.download = name;
      link.click();
      setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
      return ok(undefined);
    },
  };
}
