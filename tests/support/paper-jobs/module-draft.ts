import type { ModulePin, PinRef, RoleName } from "../../../src/job/index.ts";
import type { Loom } from "./loom.ts";
import type { Inside, TruePin } from "./paper-job.ts";
import type { Side } from "./words.ts";

interface Facts {
  readonly fits: readonly RoleName[];
  readonly inside: Inside;
  readonly side?: Side;
  readonly bearsLamp?: boolean;
  readonly isOhmic?: boolean;
}

type DraftPin = Omit<TruePin, "cavity"> & { readonly isWired: boolean };

/** A module that grows pin by pin; its pins get their real names and order only when it is done. */
export class ModuleDraft {
  readonly id: string;
  readonly loom: Loom;
  /** Whether it has a feed, and a ground, that no contact of an operator or sensor interrupts. */
  readonly hasFeed: boolean;
  readonly hasGround: boolean;
  readonly sources: { between: [string, string]; volts: number; ohms: number }[] = [];
  private drafts: DraftPin[] = [];

  constructor(loom: Loom, hasFeed: boolean, hasGround: boolean) {
    this.loom = loom;
    this.hasFeed = hasFeed;
    this.hasGround = hasGround;
    this.id = loom.part("module", "A", { pins: [] });
  }

  pin(facts: Facts, isWired = true): PinRef {
    const pin = `${this.id}:draft${this.drafts.length}`;
    const { side = null, bearsLamp = true, isOhmic = true } = facts;
    this.drafts.push({ ...facts, pin, side, bearsLamp, isOhmic, isWired });
    return pin;
  }

  get size(): number {
    return this.drafts.length;
  }

  /** Gives every pin one of these names at random, everywhere in the job. */
  finish(names: readonly string[]): readonly DraftPin[] {
    const { random, job } = this.loom;
    const free = names.slice(0, this.drafts.length);
    const nameOf = new Map(
      this.drafts.map(({ pin }) => {
        const [name = ""] = free.splice(random.below(free.length), 1);
        return [pin, name];
      }),
    );
    const renamed = (pin: PinRef): PinRef => {
      const name = nameOf.get(pin);
      return name === undefined ? pin : `${this.id}:${name}`;
    };
    for (const wire of job.diagram.wires) {
      wire.from = renamed(wire.from);
      wire.to = renamed(wire.to);
    }
    const grounds = this.drafts.filter(({ inside }) => inside === "ground").length;
    const pins = this.drafts
      .map((draft) => ({ ...draft, pin: renamed(draft.pin), fits: withStraps(draft, grounds) }))
      .sort((a, b) => names.indexOf(nameIn(a.pin)) - names.indexOf(nameIn(b.pin)));
    const own = job.diagram.parts.find(({ id }) => id === this.id);
    if (own?.kind !== "module") throw new Error(`no module ${this.id}`);
    own.pins = pins.map(({ pin }): ModulePin => ({ id: nameIn(pin) }));
    if (this.sources.length > 0)
      own.sources = this.sources.map(({ between: [plus, minus], ...source }) => ({
        between: [nameOf.get(plus) ?? "", nameOf.get(minus) ?? ""],
        ...source,
      }));
    return pins;
  }
}

const nameIn = (pin: PinRef): string => pin.slice(pin.indexOf(":") + 1);

/** A pin wired to ground beside another one that is may be a coding strap. */
const withStraps = ({ fits }: DraftPin, grounds: number): readonly RoleName[] =>
  fits.length === 1 && fits[0] === "ground" && grounds > 1 ? ["ground", "input"] : fits;
