import { CircleDashed, CircleHelp, Eraser, Spline, X } from "lucide-react";
import { useMemo } from "react";
import {
  drawnOf,
  type Followed,
  placeAsked,
  placePointedAt,
  traceDeskOf,
} from "../../../../session/index.ts";
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
  const isLookedAt = useTrace((state) => state.place !== null);
  const hasTraced = useTrace((state) => state.traced !== null);
  const drawn = useSelected(drawnOf);
  const lacks = useMemo(
    () => drawn !== null && followed?.net != null && (desk?.lacks(followed.net) ?? false),
    [drawn, followed, desk],
  );
  // The close look needs the room.
  if (!following || !desk || isLookedAt) return null;
  if (!followed) {
    if (!hasTraced) return null;
    return (
      <p className={styles.hint} data-note="followed">
        Tap a pin or a line of the picture
      </p>
    );
  }
  const { net, at, pin, questions } = followed;
  const [question] = questions;
  const ends = desk.places().filter(({ stretch }) => stretch === "ends");
  const [end] = ends;
  // With nothing placed on it, a line runs on through the symbols that let it through.
  const isBare = net !== null && net.terminals.length === 0;
  const pointedAt = net && pin === null ? placePointedAt(net, at) : null;
  return (
    <section
      className={`${styles.card} ${styles.strip}`}
      data-note="followed"
      aria-label="The followed line"
    >
      <p className={styles.words} role="status">
        {followedWords(followed)}
        {net && !lacks && " All of it is drawn."}
        {isBare && " Find the parts first: until it is placed, a fuse counts as wire."}
      </p>
      <div className={styles.acts}>
        {question && (
          <Button
            tone="primary"
            icon={<CircleHelp aria-hidden />}
            onClick={() => desk.ask(placeAsked(question))}
          >
            {questions.length === 1 ? "1 doubtful place" : `${questions.length} doubtful places`}
          </Button>
        )}
        {end ? (
          <Button icon={<CircleDashed aria-hidden />} onClick={() => desk.ask(end)}>
            {ends.length === 1 ? "1 open end" : `${ends.length} open ends`}
          </Button>
        ) : (
          pointedAt && (
            <Button tone="quiet" icon={<Eraser aria-hidden />} onClick={() => desk.ask(pointedAt)}>
              Not a line?
            </Button>
          )
        )}
        {net && lacks && (
          <Button
            // A wire that is not there misleads: what is asked comes first, and so do the parts on it.
            tone={question || isBare ? "plain" : "primary"}
            icon={<Spline aria-hidden />}
            aria-keyshortcuts="Enter"
            onClick={() => makeWires(session)}
          >
            Make it a wire
          </Button>
        )}
      </div>
      <Button
        className={styles.off as string}
        tone="quiet"
        icon={<X aria-hidden />}
        aria-label="Let go of the line"
        onClick={desk.forget}
      />
    </section>
  );
}

function followedWords({ net, pin, isSought }: Followed): string {
  if (net) return netWords(net);
  if (isSought) return "Looking for a line there…";
  return pin === null
    ? "No line of the picture is there."
    : `No line of the picture comes to ${pin}.`;
}
