import { doStep, operablesOf, overloadWords } from "../../../session/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { StatusShape } from "../status-shape.tsx";
import styles from "./news.module.css";

/** Every fuse that is blown now and what blew it, for as long as no new one is fitted. */
export function Blown() {
  const session = useSession();
  const job = useSelected((state) => state.job);
  const machine = useSelected((state) => state.machine);
  const live = useSelected((state) => state.operate.live);
  const parts = operablesOf(job, machine).byId;
  const blown = Object.entries(live?.parts ?? {}).filter(([, state]) => state.blown);
  if (!live || blown.length === 0) return null;
  return (
    <div role="alert" className={styles.blown}>
      <ul aria-label="Blown">
        {blown.map(([id]) => {
          const why = live.events.findLast((one) => one.what === "blew" && one.part === id);
          const name = [id, parts.get(id)?.label].filter(Boolean).join(" ");
          return (
            <li key={id}>
              <StatusShape status="contradiction" />
              <span>
                {name} {why?.what === "blew" ? `blew ${overloadWords(why)}` : "is blown"}
              </span>
              <Button
                aria-label={`Fit a new ${id}`}
                onClick={() => doStep(session, { do: "fit", id })}
              >
                Fit a new one
              </Button>
            </li>
          );
        })}
      </ul>
    </div>
  );
}
