import { Gauge, ListChecks, PlugZap, Table2, Waypoints } from "lucide-react";
import type { ReactNode } from "react";
import type { StationId } from "../../session/index.ts";
import { useAnalysis } from "../session-context.tsx";
import styles from "./phone-nav.module.css";

/** What a phone shows: the pin table, which is home, or one station. */
export type PhoneView = "table" | StationId;

interface PhoneNavProps {
  view: PhoneView;
  onGo: (view: PhoneView) => void;
}

const ITEMS: readonly { view: PhoneView; text: string; icon: ReactNode }[] = [
  { view: "table", text: "Pins", icon: <Table2 aria-hidden /> },
  { view: "diagram", text: "Diagram", icon: <Waypoints aria-hidden /> },
  { view: "plug", text: "Plug", icon: <PlugZap aria-hidden /> },
  { view: "check", text: "Findings", icon: <ListChecks aria-hidden /> },
  { view: "prove", text: "Reading", icon: <Gauge aria-hidden /> },
];

/** Under the thumb: one thing at a time, with the reading pad always one tap away. */
export function PhoneNav({ view, onGo }: PhoneNavProps) {
  const { contradictions } = useAnalysis().summary;
  return (
    <nav className={styles.nav} aria-label="Screens">
      {ITEMS.map((item) => (
        <button
          key={item.view}
          type="button"
          className={styles.item}
          aria-current={item.view === view ? "page" : undefined}
          onClick={() => onGo(item.view)}
        >
          <span className={styles.icon}>
            {item.icon}
            {item.view === "check" && contradictions > 0 && (
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
