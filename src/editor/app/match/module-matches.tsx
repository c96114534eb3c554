import { Unlink } from "lucide-react";
import { memo, useMemo } from "react";
import { type CavityRef, type PartOf, type PinRef, pinRef } from "../../../job/index.ts";
import { counterparts, tiedTo, unlink } from "../../../session/index.ts";
import { useGrowingList } from "../../panels/index.ts";
import { useAnalysis, useSelected, useSession } from "../../session-context.tsx";
import { Button } from "../controls/index.ts";
import { CavityPick } from "./cavity-pick.tsx";
import styles from "./match-panel.module.css";
import { nameOf } from "./module-choice.tsx";

/** The pins of one module, each with its cavity. */
export function ModuleMatches({ module }: { module: PartOf<"module"> }) {
  const job = useSelected((state) => state.job);
  const selection = useSelected((state) => state.selection);
  const analysis = useAnalysis();
  const lit = useMemo(
    () => counterparts(job, analysis, selection).refs,
    [job, analysis, selection],
  );
  const tied = tiedTo(job);
  const chosen = module.pins.findIndex((pin) => selection[0] === pinRef(module.id, pin.id));
  const { shown, isMore, end } = useGrowingList(module.pins, chosen + 1);
  return (
    <>
      <table className={styles.table}>
        <caption>{nameOf(module)}</caption>
        <thead>
          <tr>
            <th scope="col">Pin</th>
            <th scope="col">Printed</th>
            <th scope="col">Cavity</th>
            <th scope="col">
              <span className="visually-hidden">Untie</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {shown.map((pin) => {
            const ref = pinRef(module.id, pin.id);
            return (
              <MatchRow
                key={pin.id}
                pin={ref}
                mark={pin.id}
                printed={pin.printed ?? "–"}
                cavity={tied.get(ref) ?? ""}
                lit={lit.has(ref)}
              />
            );
          })}
        </tbody>
      </table>
      {isMore && <div ref={end} aria-hidden />}
      {module.pins.length === 0 && <p>This module has no pins yet: give it some on the diagram.</p>}
    </>
  );
}

interface MatchRowProps {
  pin: PinRef;
  mark: string;
  printed: string;
  cavity: CavityRef | "";
  /** Lit up as a counterpart of the selection. */
  lit: boolean;
}

/** Drawn again only when something in it is another. */
const MatchRow = memo(function MatchRow({ pin, mark, printed, cavity, lit }: MatchRowProps) {
  const session = useSession();
  return (
    <tr data-lit={lit}>
      <th scope="row">
        <button
          type="button"
          className={styles.pin}
          onClick={() => session.show({ selection: [pin] })}
        >
          {mark}
        </button>
      </th>
      <td>{printed}</td>
      <td>
        <CavityPick pin={pin} cavity={cavity} />
      </td>
      <td>
        <Button
          tone="quiet"
          icon={<Unlink aria-hidden />}
          aria-label={`Untie ${pin}`}
          disabled={cavity === ""}
          onClick={() => session.edit(`Untie ${pin}`, (draft) => unlink(draft, pin))}
        />
      </td>
    </tr>
  );
});
