import { useEffect, useRef, useState } from "react";
import type { PhotoWhite } from "../../../scan/index.ts";
import type { ColourPort, PhotoSpot, SpotColours } from "../../workers/open-colour.ts";

/** A wire that was tapped. */
export interface TappedWire {
  readonly spot: PhotoSpot;
  /** Null while it is worked out. */
  readonly colours: SpotColours | null;
}

/** The wire tapped last, its colours told beside the screen: a newer tap calls an older one off. */
export function useTappedWire(port: ColourPort | null): {
  readonly tapped: TappedWire | null;
  readonly problem: string | null;
  readonly look: (spot: PhotoSpot, white: PhotoWhite) => Promise<SpotColours | null>;
  readonly clear: () => void;
} {
  const [tapped, setTapped] = useState<TappedWire | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const asked = useRef<PhotoSpot | null>(null);
  const colours = tapped?.colours ?? null;
  useEffect(() => () => colours?.crop.close(), [colours]);

  const clear = () => {
    asked.current = null;
    port?.callOff();
    setTapped(null);
  };
  const look = async (spot: PhotoSpot, white: PhotoWhite) => {
    if (!port) return null;
    asked.current = spot;
    setProblem(null);
    setTapped({ spot, colours: null });
    try {
      const seen = await port.look(spot, white);
      if (asked.current === spot) {
        setTapped({ spot, colours: seen });
        return seen;
      }
      seen.crop.close();
    } catch (error) {
      if (asked.current === spot)
        setProblem(error instanceof Error ? error.message : String(error));
    }
    return null;
  };
  return { tapped, problem, look, clear };
}
