import { CircleHelp, Spline, X } from "lucide-react";
import { traceDeskOf } from "../../../../session/index.ts";
import { Button } from "../../../app/controls/index.ts";
import { useSelected, useSession } from "../../../session-context.tsx";
import { makeWires } from "./make-wires.ts";
import { netWords } from "./net-words.ts";
import styles from "./scan-dock.module.css";
import { useTrace } from "./use-trace.ts";

/** What the followed line joins, and what can be made of it. */
export function FollowStrip() {
  const session = useSession();
  const desk = traceDeskOf(session);
  const following = useSelected((state) => state.tool.name === "follow");
  const followed = useTrace((state) => state.followed);
  const hasTraced = useTrace((state) => state.traced !== null);
  if (!following || !desk) return null;
  if (!followed) {
    if (!hasTraced) return null;
    return <p className={styles.hint}>Tap a pin or a line of the picture</p>;
  }
  const { net, pin, questions } = followed;
  const [first] = questions;
  const words = net
    ? netWords(net)
    : `No line of the picture ${pin === null ? "is there" : `comes to ${pin}`}.`;
  return (
    <section className={styles.card} aria-label="The followed line">
      <p className={styles.words} role="status">
        {words}
      </p>
      <div className={styles.acts}>
        {first && (
          <Button
            icon={<CircleHelp aria-hidden />}
            onClick={() => desk.ask({ at: first.at, question: first, joined: null })}
          >
            {questions.length === 1 ? "1 doubtful place" : `${questions.length} doubtful places`}
          </Button>
        )}
        {net && (
          <Button
            tone="primary"
            icon={<Spline aria-hidden />}
            aria-keyshortcuts="Enter"
            onClick={() => makeWires(session)}
          >
            Make it a wire
          </Button>
        )}
        <Button
          tone="quiet"
          icon={<X aria-hidden />}
          aria-label="Let go of the line"
          onClick={desk.forget}
        />
      </div>
    </section>
  );
}
