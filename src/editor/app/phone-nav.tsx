import { Gauge, ListChecks, PlugZap, Table2, Waypoints } from "lucide-react";
import type { ReactNode } from "react";
import type { PlaceId } from "../../session/index.ts";
import { useAnalysis } from "../session-context.tsx";
import styles from "./phone-nav.module.css";

interface PhoneNavProps {
  place: PlaceId;
  onGo: (place: PlaceId) => void;
}

const ITEMS: readonly { place: PlaceId; text: string; icon: ReactNode }[] = [
  { place: "pins", text: "Pins", icon: <Table2 aria-hidden /> },
  { place: "diagram", text: "Diagram", icon: <Waypoints aria-hidden /> },
  { place: "plug", text: "Plug", icon: <PlugZap aria-hidden /> },
  { place: "check", text: "Findings", icon: <ListChecks aria-hidden /> },
  { place: "prove", text: "Reading", icon: <Gauge aria-hidden /> },
];

/** Under the thumb: one thing at a time, with the reading pad always one tap away. */
export function PhoneNav({ place, onGo }: PhoneNavProps) {
  const { contradictions } = useAnalysis().summary;
  return (
    <nav className={styles.nav} aria-label="Screens">
      {ITEMS.map((item) => (
        <button
          key={item.place}
          type="button"
          className={styles.item}
          aria-current={item.place === place ? "page" : undefined}
          onClick={() => onGo(item.place)}
        >
          <span className={styles.icon}>
            {item.icon}
            {item.place === "check" && contradictions > 0 && (
              <span className={styles.count}>
                {contradictions}
                <span className="visually-hidden"> contradictions</span>
              </span>
            )}
          </span>
          {item.text}
        </button>
      ))}
    </nav>
  );
}
