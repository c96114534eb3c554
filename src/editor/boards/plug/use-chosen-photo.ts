import { useEffect, useState } from "react";
import { useJobStore } from "../../store-context.tsx";
import { photoOf, type ReadPhoto, readPhoto } from "./read-photo.ts";

/** The photo at hand: the job's own, or the one that the user chose in its place. */
export interface ChosenPhoto {
  readonly photo: ReadPhoto | null;
  /** Whether it is the job's own. */
  readonly isOwn: boolean;
  readonly problem: string | null;
  /** Reads a file; null where it is no picture, and the problem says why. */
  readonly choose: (file: File) => Promise<ReadPhoto | null>;
}

/** @param known the name of the job's own picture; null where it has none */
export function useChosenPhoto(known: string | null): ChosenPhoto {
  const store = useJobStore();
  const [chosen, setChosen] = useState<{ photo: ReadPhoto; isOwn: boolean } | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const photo = chosen?.photo ?? null;

  useEffect(() => () => (photo ? URL.revokeObjectURL(photo.url) : undefined), [photo]);

  useEffect(() => {
    if (known === null) return;
    let stale = false;
    const load = async () => {
      const picture = await store.getPicture(known);
      const read = picture ? await photoOf(picture, known) : `The picture ${known} is not there.`;
      if (stale) return;
      if (typeof read === "string") setProblem(read);
      else setChosen({ photo: read, isOwn: true });
    };
    void load();
    return () => {
      stale = true;
    };
  }, [known, store]);

  const choose = async (file: File) => {
    const read = await readPhoto(file);
    if (typeof read === "string") {
      setProblem(read);
      return null;
    }
    setProblem(null);
    setChosen({ photo: read, isOwn: false });
    return read;
  };
  return { photo, isOwn: chosen?.isOwn ?? false, problem, choose };
}
