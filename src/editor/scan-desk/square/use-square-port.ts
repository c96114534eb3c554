import { useEffect, useState } from "react";
import { useJobStore } from "../../store-context.tsx";
import { openSquare, type SquarePort } from "../../workers/open-square.ts";
import type { Size } from "./square-work.ts";

/** The picture in a thread of its own, once it is read. */
export interface OpenedPicture {
  readonly port: SquarePort;
  /** Upright, as the camera meant it: corners are pixels of that. */
  readonly size: Size;
}

/** Reads a picture of the job's beside the screen; its thread goes with the component. */
export function useSquarePort(file: string | null): {
  readonly opened: OpenedPicture | null;
  readonly problem: string | null;
} {
  const store = useJobStore();
  const [opened, setOpened] = useState<OpenedPicture | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    if (file === null) return;
    let isGone = false;
    let port: SquarePort | null = null;
    const read = async () => {
      const picture = await store.getPicture(file);
      if (isGone) return;
      if (!picture)
        throw new Error("The picture of this sheet is not with the job. Import it again.");
      port = openSquare();
      const size = await port.open(picture);
      if (!isGone) setOpened({ port, size });
    };
    read().catch((error) => {
      if (!isGone) setProblem(error instanceof Error ? error.message : String(error));
    });
    return () => {
      isGone = true;
      port?.close();
      setOpened(null);
      setProblem(null);
    };
  }, [file, store]);
  return { opened, problem };
}
