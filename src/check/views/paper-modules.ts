import { sameList } from "../../base/index.ts";
import { askAgain, type Kept, type LinkedNetwork, type Member } from "../../circuit/index.ts";
import type { CavityRef, Job, PartOf, PinRef } from "../../job/index.ts";
import {
  cavitiesOfPins,
  moduleCircuit,
  type PaperRole,
  type PinCircuit,
  paperRoles,
} from "../../roles/index.ts";
import { keepList, Last } from "./keep.ts";
import type { Now } from "./now.ts";

/** A module with what paper and circuit say of each of its pins, in its own order. */
export interface PaperModule {
  readonly module: PartOf<"module">;
  readonly paper: readonly PaperRole[];
  readonly wired: readonly boolean[];
  readonly tied: readonly boolean[];
  readonly words: Job["words"];
}

interface Known {
  readonly ties: ReadonlyMap<PinRef, CavityRef>;
  readonly circuit: Kept<readonly PinCircuit[]>;
  readonly wired: Kept<readonly boolean[]>;
  readonly cavities: readonly (CavityRef | null)[];
  readonly view: PaperModule;
}

/**
 * Looks at each module's own words and cavities, at the words taught, and at the circuit as far as
 * its pins can see into it.
 */
export class PaperModules {
  private readonly last = new Last<readonly PaperModule[]>();
  private readonly ties = new Last<ReadonlyMap<PinRef, CavityRef>>();
  private known = new Map<Member, Known>();

  of({ job: { links, words }, circuit: { parts }, network }: Now): readonly PaperModule[] {
    return this.last.of([parts, network.revision, links, words], (before) => {
      const cavityOf = this.ties.of([links], () => cavitiesOfPins(links));
      const next: typeof this.known = new Map();
      const modules = network.order.flatMap((member) => {
        if (member.part.kind !== "module") return [];
        const known = this.known.get(member);
        const now = this.take(network, member.part, known, cavityOf, words);
        next.set(member, now);
        return [now.view];
      });
      this.known = next;
      return keepList(before, modules);
    });
  }

  private take(
    network: LinkedNetwork,
    module: PartOf<"module">,
    known: Known | undefined,
    cavityOf: ReadonlyMap<PinRef, CavityRef>,
    words: Job["words"],
  ): Known {
    const circuit = askAgain(network, known?.circuit, (sight) => moduleCircuit(sight, module));
    const wired = askAgain(network, known?.wired, (sight) =>
      circuit.value.map(({ pin }) => sight.isWired(pin)),
    );
    const isUntouched =
      known?.circuit === circuit &&
      known.wired === wired &&
      known.view.module === module &&
      known.view.words === words;
    if (isUntouched && known.ties === cavityOf) return known;
    const cavities = circuit.value.map(({ pin }) => cavityOf.get(pin) ?? null);
    if (isUntouched && sameList(known.cavities, cavities)) return { ...known, ties: cavityOf };
    const paper = paperRoles(module, circuit.value, (pin) => cavityOf.get(pin) ?? null, words);
    const tied = cavities.map((cavity) => cavity !== null);
    return {
      ties: cavityOf,
      circuit,
      wired,
      cavities,
      view: { module, paper, wired: wired.value, tied, words },
    };
  }
}
