import { ArrowRight } from "lucide-react";
import { findingWithKey, nextStation, type PlaceId, stationsOf } from "../../session/index.ts";
import { DiagramBoard } from "../boards/diagram/index.ts";
import { PlugBoard } from "../boards/plug/index.ts";
import { FindingStrip, FindingsPanel, OperatePanel } from "../panels/index.ts";
import { useAnalysis, useSelected } from "../session-context.tsx";
import { PinTable } from "../table/index.ts";
import { useScanProgress } from "../use-scan-progress.ts";
import { StationPanel, useOperating } from "./aside.tsx";
import { useJobDesk } from "./job-desk-context.tsx";
import styles from "./phone-screen.module.css";

interface PhoneScreenProps {
  place: PlaceId;
  onGo: (place: PlaceId) => void;
}

/** The one thing that a phone shows at a time. */
export function PhoneScreen({ place, onGo }: PhoneScreenProps) {
  const desk = useJobDesk();
  const selecting = useSelected((state) => state.selection.length > 0);
  const operating = useOperating();
  const chosen = useSelected((state) => state.selection[0]);
  const finding = findingWithKey(useAnalysis(), chosen ?? "");
  if (place === "diagram" || place === "plug") {
    return (
      <main className={styles.split}>
        <section className={styles.board} aria-label={place === "diagram" ? "Diagram" : "Plug"}>
          {place === "diagram" ? <DiagramBoard onOpenDemo={desk.openDemo} /> : <PlugBoard />}
        </section>
        {(selecting || operating) && (
          <div className={styles.details} data-operating={operating}>
            {operating ? (
              <OperatePanel stops={place !== "diagram"} />
            ) : finding && place === "diagram" ? (
              <FindingStrip finding={finding} />
            ) : (
              <StationPanel station={place} />
            )}
          </div>
        )}
      </main>
    );
  }
  return (
    <main className={styles.scroll}>
      {place === "pins" && (
        <>
          <NextStep onGo={onGo} />
          <PinTable />
        </>
      )}
      {place === "check" && <FindingsPanel />}
      {(place === "match" || place === "prove") && <StationPanel station={place} />}
    </main>
  );
}

/** The path in one line: what to do next, and a tap that takes you there. */
function NextStep({ onGo }: { onGo: (place: PlaceId) => void }) {
  const job = useSelected((state) => state.job);
  const next = nextStation(stationsOf(job, useAnalysis(), useScanProgress()));
  if (!next) return null;
  return (
    <button type="button" className={styles.next} onClick={() => onGo(next.id)}>
      <span>
        <span className={styles.nextTitle}>
          {next.title} · {next.has}
        </span>
        {next.next}
      </span>
      <ArrowRight aria-hidden />
    </button>
  );
}
