import { Check } from "lucide-react";
import { useMemo } from "react";
import { nextStation, type PlaceId, type Station, stationsOf } from "../../session/index.ts";
import { useAnalysis, useSelected } from "../session-context.tsx";
import { useScanProgress } from "../use-scan-progress.ts";
import styles from "./station-path.module.css";

interface StationPathProps {
  onGo: (station: PlaceId) => void;
}

/** The stations of the job as a path: how each one stands, and what to do next there. */
export function StationPath({ onGo }: StationPathProps) {
  const job = useSelected((state) => state.job);
  const at = useSelected((state) => state.station);
  const analysis = useAnalysis();
  const scan = useScanProgress();
  const stations = useMemo(() => stationsOf(job, analysis, scan), [job, analysis, scan]);
  const next = nextStation(stations);
  return (
    <nav className={styles.path} aria-label="Stations">
      <ol>
        {stations.map((station, index) => (
          <li key={station.id}>
            <button
              type="button"
              className={styles.station}
              data-state={station.state}
              data-up-next={station === next}
              data-alarm={station.id === "check" && station.state === "started"}
              aria-current={station.id === at ? "step" : undefined}
              onClick={() => onGo(station.id)}
            >
              <Badge station={station} number={index + 1} />
              <span className={styles.words}>
                <span className={styles.title}>{station.title}</span>
                <span className={styles.line}>
                  <span>{station.has}</span>
                  {station.next && <span className={styles.next}>{station.next}</span>}
                </span>
              </span>
            </button>
          </li>
        ))}
      </ol>
    </nav>
  );
}

/** A tick where nothing is left to do, else the number of the stop. */
function Badge({ station, number }: { station: Station; number: number }) {
  return (
    <span className={styles.badge} data-state={station.state}>
      {station.state === "done" ? (
        <Check role="img" aria-label="has what it needs" size={18} strokeWidth={3} />
      ) : (
        number
      )}
    </span>
  );
}
