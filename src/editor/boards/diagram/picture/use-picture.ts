import { useEffect, useState } from "react";
import { useJobStore } from "../../../store-context.tsx";
import { useTheme } from "../../../theme/theme.tsx";
import { cutPicture, type PictureTiles } from "./picture-tiles.ts";

/** The picture of a sheet, as far as it has been read; `missing` when it can't be. */
export function usePicture(file: string | null): {
  tiles: PictureTiles | null;
  missing: boolean;
} {
  const store = useJobStore();
  const { name, palette } = useTheme();
  const [tiles, setTiles] = useState<PictureTiles | null>(null);
  const [missing, setMissing] = useState(false);
  useEffect(() => {
    let stopped = false;
    let latest: PictureTiles | null = null;
    setTiles(null);
    setMissing(false);
    if (file === null) return;
    const read = async () => {
      const picture = await store.getPicture(file);
      if (stopped) return;
      if (!picture) {
        setMissing(true);
        return;
      }
      const blob = new Blob([picture.bytes as BlobPart], { type: picture.type });
      const tint = { theme: name, paper: palette.paperRaised };
      await cutPicture(
        blob,
        tint,
        (cut) => {
          latest = cut;
          setTiles(cut);
        },
        () => stopped,
      );
    };
    read().catch(() => {
      if (!stopped) setMissing(true);
    });
    return () => {
      stopped = true;
      latest?.close();
    };
  }, [file, store, name, palette]);
  return { tiles, missing };
}
