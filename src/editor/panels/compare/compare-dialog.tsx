import { Download } from "lucide-react";
import { useEffect, useRef, useState } from "react";
import { type Comparison, comparisonCsv, isDifferent } from "../../../session/index.ts";
import { FileLink, Modal } from "../../app/controls/index.ts";
import { fileNameFor } from "../../app/file-transfer.ts";
import { useAnswer, useSelected, useSession } from "../../session-context.tsx";
import { PlugChoice } from "../plug-choice.tsx";
import styles from "./compare-dialog.module.css";
import { CompareTable } from "./compare-table.tsx";

/** What every machine of the job has in one plug, beside the diagram and one another. */
export function CompareDialog() {
  const session = useSession();
  const plugs = useSelected((state) => state.job.plugs);
  const shownPlug = useSelected((state) => state.plug);
  const [plug, setPlug] = useState(shownPlug ?? plugs[0]?.id ?? "");
  const [onlyDifferent, setOnlyDifferent] = useState(false);
  const newest = useAnswer(plug === "" ? null : { about: "comparison", plug });
  // While a newer one is worked out the one of before stands there, and says so.
  const last = useRef<Comparison | null>(null);
  const comparison = newest ?? (last.current?.plug === plug ? last.current : null);
  last.current = comparison;
  const rows = comparison?.rows ?? [];
  const different = rows.filter(isDifferent);
  // A row in which a difference is just being typed away stays under the hand until the tick is set anew.
  const kept = useRef({ plug, cavities: new Set<string>() });
  if (!onlyDifferent || kept.current.plug !== plug) kept.current = { plug, cavities: new Set() };
  else for (const { cavity } of different) kept.current.cavities.add(cavity);
  const shown = onlyDifferent
    ? rows.filter((row) => isDifferent(row) || kept.current.cavities.has(row.cavity))
    : rows;
  return (
    <Modal
      title="Compare machines"
      lead="Each cavity as the diagram has it and as each machine has it. What nobody has noted is no difference."
      width="full"
      onClose={() => session.show({ dialog: null })}
    >
      {plugs.length === 0 ? (
        <p>Draw the plug first: machines are compared cavity by cavity.</p>
      ) : (
        <div className={styles.dialog}>
          <div className={styles.choices}>
            <PlugChoice className={styles.plug} plug={plug} onPlug={setPlug} />
            <label className={styles.only}>
              <input
                type="checkbox"
                checked={onlyDifferent}
                onChange={(event) => setOnlyDifferent(event.target.checked)}
              />
              Differences only
            </label>
            {newest && <SaveTable comparison={newest} onlyDifferent={onlyDifferent} />}
            <p role="status" className={styles.status}>
              {newest ? countOf(different.length, rows.length) : "Checking every machine…"}
            </p>
          </div>
          {comparison && shown.length > 0 && (
            <CompareTable comparison={comparison} rows={shown} isCurrent={newest !== null} />
          )}
        </div>
      )}
    </Modal>
  );
}

function countOf(different: number, all: number): string {
  if (all === 0) return "This plug has no cavities yet.";
  if (different === 0) return "No differences among what is known.";
  return `Differences in ${different} of ${all} cavities.`;
}

function SaveTable({
  comparison,
  onlyDifferent,
}: {
  comparison: Comparison;
  onlyDifferent: boolean;
}) {
  const [href, setHref] = useState<string>();
  useEffect(() => {
    const rows = onlyDifferent ? comparison.rows.filter(isDifferent) : comparison.rows;
    const type = "text/csv;charset=utf-8";
    const url = URL.createObjectURL(new Blob([comparisonCsv(comparison, rows)], { type }));
    setHref(url);
    return () => URL.revokeObjectURL(url);
  }, [comparison, onlyDifferent]);
  return (
    <FileLink
      href={href}
      name={fileNameFor(`${comparison.plug} machines compared`, ".csv")}
      icon={<Download aria-hidden />}
    >
      Save table (CSV)
    </FileLink>
  );
}
