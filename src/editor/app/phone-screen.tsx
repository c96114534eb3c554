import { ArrowRight } from "lucide-react";
import { nextStation, type StationId, stationsOf } from "../../session/index.ts";
import { useAnalysis, useSelected } from "../session-context.tsx";
import { StationPanel } from "./aside.tsx";
import { useJobDesk } from "./job-desk-context.tsx";
import type { PhoneView } from "./phone-nav.tsx";
import styles from "./phone-screen.module.css";
import { DiagramBoard, FindingsPanel, PinTable, PlugBoard } from "./pieces.tsx";

interface PhoneScreenProps {
  view: PhoneView;
  onGo: (view: StationId) => void;
}

/** The one thing that a phone shows at a time. */
export function PhoneScreen({ view, onGo }: PhoneScreenProps) {
  const desk = useJobDesk();
  const selecting = useSelected((state) => state.selection.length > 0);
  if (view === "diagram" || view === "plug") {
    return (
      <main className={styles.split}>
        <section className={styles.board} aria-label={view === "diagram" ? "Diagram" : "Plug"}>
          {view === "diagram" ? <DiagramBoard onOpenDemo={desk.openDemo} /> : <PlugBoard />}
        </section>
        {selecting && (
          <div className={styles.details}>
            <StationPanel station={view} />
          </div>
        )}
      </main>
    );
  }
  return (
    <main className={styles.scroll}>
      {view === "table" && (
        <>
          <NextStep onGo={onGo} />
          <PinTable />
        </>
      )}
      {view === "check" && <FindingsPanel />}
      {(view === "match" || view === "prove") && <StationPanel station={view} />}
    </main>
  );
}

/** The path in one line: what to do next, and a tap that takes you there. */
function NextStep({ onGo }: { onGo: (view: StationId) => void }) {
  const job = useSelected((state) => state.job);
  const next = nextStation(stationsOf(job, useAnalysis()));
  if (!next) return null;
  return (
    <button type="button" className={styles.next} onClick={() => onGo(next.id)}>
      <span>
        <span className={styles.nextTitle}>{next.title}</span>
        {next.next}
      </span>
      <ArrowRight aria-hidden />
    </button>
  );
}
