import { useEffect, useState } from "react";
import type { PhotoWhite } from "../../../scan/index.ts";
import { type ColourPort, openColour } from "../../workers/open-colour.ts";
import type { ReadPhoto } from "./read-photo.ts";

/** A photo in a thread of its own, once it is read there. */
export interface PhotoColours {
  readonly photo: ReadPhoto;
  readonly port: ColourPort;
  /** What is white in it, as far as it shows. */
  readonly white: PhotoWhite;
}

/** Has the colours of a photo told beside the screen; its thread goes with the photo. */
export function usePhotoColours(photo: ReadPhoto | null): {
  readonly colours: PhotoColours | null;
  readonly problem: string | null;
} {
  const [colours, setColours] = useState<PhotoColours | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    if (!photo) return;
    let isGone = false;
    const port = openColour();
    port.open(photo.picture).then(
      ({ white }) => !isGone && setColours({ photo, port, white }),
      (error) => !isGone && setProblem(error instanceof Error ? error.message : String(error)),
    );
    return () => {
      isGone = true;
      port.close();
      setColours(null);
      setProblem(null);
    };
  }, [photo]);
  return { colours, problem };
}
