import { formatQuantity } from "../../base/index.ts";
import type { Job } from "../../job/index.ts";
import { wordsForSetup } from "../../readings/index.ts";
import { capital, type RuledOut, rolesInWords } from "../../roles/index.ts";
import type { PinRow } from "../../session/index.ts";
import { useSelected, useSession } from "../session-context.tsx";
import styles from "./row-details.module.css";

/** Which roles the readings leave, and which reading ruled each of the others out: a tap shows it. */
export function MeterProves({ row }: { row: PinRow }) {
  const session = useSession();
  const job = useSelected((state) => state.job);
  const { role, evidence } = row;
  if (!role || evidence.length === 0) return null;
  const ruledOut = role.meterRuledOut ?? [];
  const left = role.fits.filter((one) => role.meterFits.includes(one));
  const both =
    left.length === 0
      ? `The circuit says ${rolesInWords(role.fits)}, which the meter rules out.`
      : left.length === 1
        ? `Circuit and meter together leave ${rolesInWords(left)}.`
        : "";
  return (
    <>
      <h3>What the meter proves here</h3>
      {ruledOut.length === 0 ? (
        <p className={styles.none}>
          Nothing yet: only volts that hold under a test lamp, or a solid way to ground, with the
          module unplugged, rule a role out. No volts and OL may be a fault.
        </p>
      ) : (
        <>
          <p>Still possible: {rolesInWords(role.meterFits)}.</p>
          {both !== "" && <p className={styles.fits}>{both}</p>}
          <ul className={styles.list}>
            {together(ruledOut).map(({ by, roles, whys }) => (
              <li key={by.join(" ")}>
                <button
                  type="button"
                  className={styles.taken}
                  onClick={() => session.show({ selection: [...by] })}
                >
                  <span>Ruled out: {rolesInWords(roles)}</span>
                  <span className={styles.how}>
                    by {by.map((id) => wordsFor(job, row, id)).join("; ")}
                  </span>
                  <span className={styles.how}>{`${capital(whys.join("; "))}.`}</span>
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

interface Together {
  readonly by: RuledOut["by"];
  readonly roles: RuledOut["role"][];
  readonly whys: string[];
}

/** Roles that the same readings rule out, in one line. */
function together(ruledOut: readonly RuledOut[]): readonly Together[] {
  const lines = new Map<string, Together>();
  for (const { role, by, why } of ruledOut) {
    const key = by.join(" ");
    const line = lines.get(key) ?? { by, roles: [], whys: [] };
    lines.set(key, line);
    line.roles.push(role);
    if (!line.whys.includes(why)) line.whys.push(why);
  }
  return [...lines.values()];
}

/** `reading R3 (24.60 V; volts with a test lamp as load, cavity 1 to chassis, A1 unplugged)` */
function wordsFor(job: Job, { evidence }: PinRow, id: string): string {
  const reading = evidence.find((one) => one.reading.id === id)?.reading;
  if (!reading) return `reading ${id}`;
  const value = formatQuantity(reading.value, reading.quantity);
  return `reading ${id} (${value}; ${wordsForSetup(job, reading)})`;
}
