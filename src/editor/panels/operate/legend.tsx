import type { LineState } from "../../../circuit/index.ts";
import { LINE_WORDS } from "../../../session/index.ts";
import { LineMark } from "./line-mark.tsx";
import styles from "./operate-panel.module.css";

const LINES: readonly (readonly [LineState, string])[] = [
  ["live", "joined to battery plus by wires and closed contacts alone"],
  ["live-through-load", "no other way to battery plus"],
  ["between", "as between two lamps in a row"],
  ["ground-through-load", "no other way to chassis"],
  ["ground", "joined to chassis by wires and closed contacts alone"],
  ["floating", "tied to nothing: a meter may show a ghost voltage"],
  ["unknown", "depends on something that nobody has said"],
];

/** The marks on the plug's face, as paths of a square 20 wide. */
const BADGES: readonly (readonly [path: string, says: string, filled?: boolean])[] = [
  ["M10 1a9 9 0 1 0 0 18a9 9 0 1 0 0-18zM10 5l5 8H5z", "Live; hollow by way of a load", true],
  [
    "M10 1a9 9 0 1 0 0 18a9 9 0 1 0 0-18zM5 7h10M7 10h6M8.5 13h3",
    "Ground; two bars by way of a load",
  ],
];

/** What the drawing means while it is operated. */
export function Legend() {
  return (
    <>
      <dl className={styles.legend} aria-label="On the diagram">
        {LINES.map(([state, says]) => (
          <div key={state}>
            <dt>
              <LineMark state={state} />
            </dt>
            <dd>
              <strong>{LINE_WORDS[state]}</strong>: {says}
            </dd>
          </div>
        ))}
        <div>
          <dt>
            <svg className={styles.chevrons} viewBox="0 0 48 16" aria-hidden="true">
              <path d="M2 8H46M10 2l6 6-6 6M30 2l6 6-6 6" />
            </svg>
          </dt>
          <dd>
            <strong>current</strong>: the way it flows; heavier from 0.2 A and from 5 A
          </dd>
        </div>
      </dl>
      <h3>On the plug</h3>
      <dl className={styles.legend} aria-label="On the plug">
        {BADGES.map(([path, says, filled]) => (
          <div key={says}>
            <dt>
              <svg className={styles.badge} viewBox="0 0 20 20" aria-hidden="true">
                <path d={path} data-filled={filled} fillRule="evenodd" />
              </svg>
            </dt>
            <dd>{says}</dd>
          </div>
        ))}
        <div>
          <dt>
            <svg className={styles.badge} viewBox="0 0 20 20" aria-hidden="true">
              <circle cx="10" cy="10" r="8" strokeDasharray="3 3.2" />
            </svg>
          </dt>
          <dd>Floating</dd>
        </div>
        <div>
          <dt>
            <svg className={styles.badge} viewBox="0 0 20 20" aria-hidden="true">
              <path d="M10 .8 19.2 10 10 19.2.8 10zM7.8 8a2.2 2.2 0 1 1 3.2 2c-.7.4-1 .8-1 1.6M10 14.2v.1" />
            </svg>
          </dt>
          <dd>Can’t tell</dd>
        </div>
      </dl>
    </>
  );
}
