import { useMemo } from "react";
import type { CavityRef, Job } from "../../../job/index.ts";
import { correctionsAbout } from "../../../session/index.ts";
import { CorrectionButtons } from "../../panels/findings/correction-buttons.tsx";
import { useAnalysis } from "../../session-context.tsx";
import styles from "./cavity-corrections.module.css";

/** What the findings about a cavity and its pin offer to put right. */
export function CavityCorrections({ cavity, job }: { cavity: CavityRef; job: Job }) {
  const { findings } = useAnalysis();
  const corrections = useMemo(() => {
    const pins = job.links.flatMap((one) => (one.cavity === cavity ? [one.pin] : []));
    return correctionsAbout(findings, new Set([cavity, ...pins]));
  }, [findings, job.links, cavity]);
  if (corrections.length === 0) return null;
  return (
    <section className={styles.corrections} aria-label="To put right">
      <h4>To put right</h4>
      <CorrectionButtons corrections={corrections} />
    </section>
  );
}
