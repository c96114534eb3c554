import { sameList } from "../../base/index.ts";
import { askAgain, type Kept, type LinkedNetwork, type Member } from "../../circuit/index.ts";
import type { CavityRef, Job, PartOf, PinRef, RoleName } from "../../job/index.ts";
import {
  type AdoptedRoles,
  adoptedRoles,
  cavitiesOfPins,
  moduleCircuit,
  type PaperRole,
  type PinCircuit,
  paperRoles,
  taughtRole,
} from "../../roles/index.ts";
import { keepInStep, keepList, Last } from "./keep.ts";
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
  readonly member: Member;
  readonly ties: ReadonlyMap<PinRef, CavityRef>;
  readonly adoptions: AdoptedRoles;
  readonly circuit: Kept<readonly PinCircuit[]>;
  readonly wired: Kept<readonly boolean[]>;
  readonly cavities: readonly (CavityRef | null)[];
  readonly adopted: readonly (RoleName | undefined)[];
  /** All words taught, and what of them concerns this module, pin by pin. */
  readonly words: Job["words"];
  readonly taught: readonly (RoleName | null)[];
  readonly view: PaperModule;
}

/** What the job says beside the drawing. */
interface OnPaper {
  readonly cavityOf: ReadonlyMap<PinRef, CavityRef>;
  readonly adoptions: AdoptedRoles;
  readonly words: Job["words"];
}

/**
 * Looks at each module's own words and cavities, at the words taught, at the roles adopted for its
 * pins, and at the circuit as far as its pins can see into it.
 */
export class PaperModules {
  private readonly last = new Last<readonly PaperModule[]>();
  private readonly ties = new Last<ReadonlyMap<PinRef, CavityRef>>();
  private readonly adoptions = new Last<AdoptedRoles>();
  /** In the order of the drawing. */
  private known: readonly Known[] = [];

  of({ job, machine, circuit: { parts }, network }: Now): readonly PaperModule[] {
    const { links, words, adopted } = job;
    const inputs = [parts, network.revision, links, words, adopted, machine.id];
    return this.last.of(inputs, (before) => {
      const cavityOf = this.ties.of([links], () => cavitiesOfPins(links));
      const adoptions = this.adoptions.of([adopted, machine.id], () =>
        adoptedRoles(adopted, machine.id),
      );
      const { modules } = network.roster;
      const onPaper = { cavityOf, adoptions, words };
      const were = this.known;
      this.known = keepInStep(were, modules, memberOf, (member, known) =>
        this.take(network, member, known, onPaper),
      );
      if (before && this.known === were) return before;
      return keepList(
        before,
        this.known.map(({ view }) => view),
      );
    });
  }

  private take(
    network: LinkedNetwork,
    member: Member,
    known: Known | undefined,
    { cavityOf, adoptions, words }: OnPaper,
  ): Known {
    // the list of modules holds nothing else
    const module = member.part as PartOf<"module">;
    const circuit = askAgain(network, known?.circuit, (sight) => moduleCircuit(sight, module));
    const wired = askAgain(network, known?.wired, (sight) =>
      circuit.value.map(({ pin }) => sight.isWired(pin)),
    );
    const isUntouched =
      known?.circuit === circuit && known.wired === wired && known.view.module === module;
    const isSaid = isUntouched && known.words === words;
    if (isSaid && known.ties === cavityOf && known.adoptions === adoptions) return known;
    const taught = isSaid ? known.taught : taughtBeside(module, words);
    const cavities = circuit.value.map(({ pin }) => cavityOf.get(pin) ?? null);
    const adopted = circuit.value.map(({ pin }) => adoptions.get(pin));
    const isSame =
      isUntouched &&
      sameList(known.taught, taught) &&
      sameList(known.cavities, cavities) &&
      sameList(known.adopted, adopted);
    // Words taught for other modules' pins change nothing here: the view keeps the old list.
    if (isSame) return { ...known, ties: cavityOf, adoptions, words };
    const tie = (pin: PinRef) => cavityOf.get(pin) ?? null;
    const paper = paperRoles(module, circuit.value, tie, words, adoptions);
    const tied = cavities.map((cavity) => cavity !== null);
    return {
      member,
      ties: cavityOf,
      adoptions,
      circuit,
      wired,
      cavities,
      adopted,
      words,
      taught,
      view: { module, paper, wired: wired.value, tied, words },
    };
  }
}

const memberOf = ({ member }: Known) => member;

const taughtBeside = ({ pins }: PartOf<"module">, words: Job["words"]) =>
  pins.map(({ printed }) => (printed === undefined ? null : taughtRole(printed, words)));
