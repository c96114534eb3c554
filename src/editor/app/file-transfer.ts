/** Files in and out of the browser: the File System Access API where there is one, else the usual way. */

/** What a picked or dropped file gives; `handle` lets a later save go back to the same place. */
export interface PickedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly handle: WritableHandle | null;
}

export interface WritableHandle {
  readonly name: string;
  createWritable(): Promise<{ write(data: Blob): Promise<void>; close(): Promise<void> }>;
}

interface ReadableHandle extends WritableHandle {
  getFile(): Promise<File>;
}

interface FilePickers {
  showOpenFilePicker?(options: object): Promise<ReadableHandle[]>;
  showSaveFilePicker?(options: object): Promise<WritableHandle>;
}

export const JOB_ENDINGS = [".pintruth", ".json"] as const;

const pickers = window as unknown as FilePickers;

const isCancelled = (error: unknown) =>
  error instanceof DOMException && error.name === "AbortError";

/** Asks for a job file, and for the pictures beside it. Null when the user backed out. */
export async function pickFiles(): Promise<readonly PickedFile[] | null> {
  if (pickers.showOpenFilePicker) {
    try {
      const handles = await pickers.showOpenFilePicker({ multiple: true });
      return await Promise.all(
        handles.map(async (handle) => ({ ...(await readFile(await handle.getFile())), handle })),
      );
    } catch (error) {
      if (isCancelled(error)) return null;
      throw error;
    }
  }
  return new Promise((resolve, reject) => {
    const input = document.createElement("input");
    input.type = "file";
    input.multiple = true;
    input.addEventListener("cancel", () => resolve(null));
    input.addEventListener("change", () => {
      Promise.all([...(input.files ?? [])].map(readFile)).then(resolve, reject);
    });
    input.click();
  });
}

export async function readFile(file: File): Promise<PickedFile> {
  return { name: file.name, bytes: new Uint8Array(await file.arrayBuffer()), handle: null };
}

/**
 * Puts a file where the user says: to `handle` when there is one, else asks, else downloads it.
 * Returns where it went, for the next save; null when it was a download or the user backed out.
 */
export async function putFile(
  data: Blob,
  name: string,
  handle: WritableHandle | null,
): Promise<{ done: boolean; handle: WritableHandle | null }> {
  try {
    const to = handle ?? (await pickers.showSaveFilePicker?.({ suggestedName: name })) ?? null;
    if (!to) {
      download(data, name);
      return { done: true, handle: null };
    }
    const stream = await to.createWritable();
    await stream.write(data);
    await stream.close();
    return { done: true, handle: to };
  } catch (error) {
    if (isCancelled(error)) return { done: false, handle: null };
    throw error;
  }
}

function download(data: Blob, name: string) {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(data);
  link.download = name;
  link.click();
  // The browser reads the address after the click has returned.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/** A title as a file name that every system takes. */
export function fileNameFor(title: string, ending: string): string {
  const stem = title
    .replace(/[\p{Cc}/\\:*?"<>|]+/gu, " ")
    .replace(/\s+/g, " ")
    .replace(/^[.\s]+/, "")
    .trim()
    .slice(0, 80);
  return `${stem || "job"}${ending}`;
}
