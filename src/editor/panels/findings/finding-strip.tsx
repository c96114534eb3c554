import { ArrowLeft } from "lucide-react";
import type { Finding } from "../../../check/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useSession } from "../../session-context.tsx";
import { StatusMark } from "../status-shape.tsx";
import { placesOf } from "./finding-item.tsx";
import styles from "./finding-strip.module.css";

/** Under the diagram of a phone: the finding whose path is drawn there, and the way back to the others. */
export function FindingStrip({ finding }: { finding: Finding }) {
  const session = useSession();
  return (
    <section className={styles.strip} aria-label="Finding shown">
      <p className={styles.title}>
        <StatusMark status={finding.severity} />
        <span>{placesOf(finding.subjects)}</span>
      </p>
      <p>{finding.message}</p>
      <Button icon={<ArrowLeft aria-hidden />} onClick={() => session.show({ station: "check" })}>
        Back to the findings
      </Button>
    </section>
  );
}
