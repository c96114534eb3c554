import { useEffect, useState } from "react";
import { useJobStore } from "../../store-context.tsx";

/** A picture of the job, decoded; null while it loads, or when the store has none by that name. */
export function usePhoto(file: string | null): ImageBitmap | null {
  const store = useJobStore();
  const [picture, setPicture] = useState<ImageBitmap | null>(null);
  useEffect(() => {
    if (file === null) return;
    let stale = false;
    let bitmap: ImageBitmap | null = null;
    store
      .getPicture(file)
      .then((stored) => {
        if (!stored) return null;
        return createImageBitmap(new Blob([stored.bytes as BlobPart], { type: stored.type }));
      })
      .then((decoded) => {
        bitmap = decoded;
        if (stale) decoded?.close();
        else setPicture(decoded);
      })
      // A face without its photo is still a face: the cavities are drawn all the same.
      .catch(() => setPicture(null));
    return () => {
      stale = true;
      setPicture(null);
      bitmap?.close();
    };
  }, [file, store]);
  return picture;
}
