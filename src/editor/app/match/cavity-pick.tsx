import { ChevronDown } from "lucide-react";
import { useMemo } from "react";
import {
  type CavityRef,
  cavityRef,
  type Job,
  type PinRef,
  type Plug,
  splitRef,
} from "../../../job/index.ts";
import { plugTitle } from "../../../plug/index.ts";
import { link, tiedTo } from "../../../session/index.ts";
import { type Choice, ChoiceList, ChoicePopover } from "../../panels/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import styles from "./match-panel.module.css";

interface CavityPickProps {
  pin: PinRef;
  cavity: CavityRef | "";
}

/** The cavity of a pin, and all cavities to choose from once it is tapped. */
export function CavityPick({ pin, cavity }: CavityPickProps) {
  const plugs = useSelected((state) => state.job.plugs);
  const onlyPlug = plugs.length === 1 && plugs[0]?.id === splitRef(cavity).owner;
  const shown = onlyPlug ? splitRef(cavity).name : cavity;
  return (
    <ChoicePopover
      name={`Cavity of pin ${pin}`}
      button={
        <button
          type="button"
          className={styles.opener}
          data-empty={cavity === ""}
          aria-label={`Cavity of pin ${pin}: ${shown || "none"}. Choose another`}
        >
          <span>{shown || "none"}</span>
          <ChevronDown aria-hidden size={20} />
        </button>
      }
    >
      {(close) => <Cavities pin={pin} cavity={cavity} onDone={close} />}
    </ChoicePopover>
  );
}

function Cavities({ pin, cavity, onDone }: CavityPickProps & { onDone: () => void }) {
  const session = useSession();
  const job = useSelected((state) => state.job);
  const plug = useSelected((state) => state.plug);
  const choices = useMemo(() => choicesOf(job, plug, cavity), [job, plug, cavity]);
  const choose = (picked: CavityRef) => {
    session.edit(`Tie ${pin} to ${picked}`, (draft) => link(draft, pin, picked));
    onDone();
  };
  return (
    <ChoiceList
      choices={choices}
      name="Cavities"
      search="Search for a cavity"
      placeholder="Cavity"
      none="No cavity of that name."
      onChoose={choose}
    />
  );
}

/**
 * Every cavity as it stands on its face, the plug at hand first and then the one that the pin sits
 * in; of equal marks on one plug only one.
 */
function choicesOf(job: Job, atHand: string | null, chosen: CavityRef | ""): readonly Choice[] {
  const { plugs } = job;
  const tied = tiedTo(job);
  const sitsIn = splitRef(chosen).owner;
  const rankOf = ({ id }: Plug) => (id === atHand ? 0 : id === sitsIn ? 1 : 2);
  const inOrder = plugs.toSorted((a, b) => rankOf(a) - rankOf(b));
  return inOrder.flatMap((plug) =>
    withoutTwins(plug.cavities).map((cavity): Choice => {
      const ref = cavityRef(plug.id, cavity.mark);
      const pin = tied.get(ref);
      return {
        id: ref,
        text: plugs.length > 1 ? ref : cavity.mark,
        name: cavity.mark,
        group: plugTitle(plug),
        chosen: ref === chosen,
        ...(cavity.blocked ? { disabled: true } : {}),
        ...underOf(pin && ref !== chosen ? pin : null, cavity),
      };
    }),
  );
}

function withoutTwins(cavities: Plug["cavities"]): Plug["cavities"] {
  const seen = new Set<string>();
  return cavities.filter(({ mark }) => !seen.has(mark) && seen.add(mark));
}

function underOf(
  pin: PinRef | null,
  { blocked, empty }: { blocked?: boolean; empty?: boolean },
): { under?: string } {
  if (pin !== null) return { under: `now pin ${pin}` };
  if (blocked) return { under: "blocked" };
  return empty ? { under: "empty" } : {};
}
