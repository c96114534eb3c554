import { type ReactNode, useCallback } from "react";
import { useSession } from "../session-context.tsx";
import { useJobStore } from "../store-context.tsx";
import { importPicture } from "./import-picture.ts";
import { useFileInput } from "./use-file-input.tsx";

const ACCEPTED = "image/png,image/jpeg,image/webp,application/pdf,.png,.jpg,.jpeg,.webp,.pdf";

/** Ways of bringing pictures in; what goes wrong is told in the status line. */
export interface PictureImport {
  /** Asks for files. */
  readonly pick: () => void;
  readonly take: (files: readonly Blob[]) => void;
  /** Reads a picture from the clipboard. */
  readonly paste: () => void;
  /** To be placed anywhere in the component. */
  readonly dialog: ReactNode;
}

export function usePictureImport(): PictureImport {
  const session = useSession();
  const store = useJobStore();
  const tell = useCallback(
    (error: unknown) => {
      const text = error instanceof Error ? error.message : String(error);
      session.show({ notice: { tone: "error", text } });
    },
    [session],
  );
  const take = useCallback(
    (files: readonly Blob[]) => {
      const all = async () => {
        for (const file of files) await importPicture(file, { session, store });
      };
      all().catch(tell);
    },
    [session, store, tell],
  );
  const paste = useCallback(() => {
    pastedPicture()
      .then((picture) => take([picture]))
      .catch(tell);
  }, [take, tell]);
  const { ask, input } = useFileInput({
    label: "Picture or PDF of the diagram",
    accept: ACCEPTED,
    multiple: true,
    onFiles: take,
  });
  return { pick: ask, take, paste, dialog: input };
}

async function pastedPicture(): Promise<Blob> {
  const byKeys =
    "Press Ctrl+V (⌘V) here to paste: this browser does not let a button read the clipboard.";
  if (!navigator.clipboard?.read) throw new Error(byKeys);
  const items = await navigator.clipboard.read().catch(() => {
    throw new Error(byKeys);
  });
  for (const item of items) {
    const type = item.types.find((one) => one.startsWith("image/"));
    if (type) return item.getType(type);
  }
  throw new Error("There is no picture on the clipboard. Copy one and paste again.");
}
