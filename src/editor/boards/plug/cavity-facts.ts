import { keptOf } from "../../../base/index.ts";
import type { CheckResult } from "../../../check/index.ts";
import type { LiveState, PointState } from "../../../circuit/index.ts";
import {
  type CavityRef,
  type Colour,
  cavityRef,
  type Id,
  type Job,
  type MachineWire,
  type PinRef,
} from "../../../job/index.ts";
import type { FaceView, SeenCavity } from "../../../plug/index.ts";
import type { Verdict } from "../../../roles/index.ts";
import { drawnJob, pointWords, type ReadingDraft } from "../../../session/index.ts";
import { rolesByPin } from "../../../sheet/index.ts";
import { nameColour } from "../../../standards/index.ts";

/** All that the board shows of one cavity. */
export interface CavityFacts extends SeenCavity {
  readonly ref: CavityRef;
  readonly state: "plain" | "empty" | "blocked";
  readonly colour: Colour | null;
  /** Whose colour it is: seen on the machine at hand, or only drawn on the diagram. */
  readonly colourFrom: "machine" | "diagram" | null;
  readonly pin: PinRef | null;
  readonly verdict: Verdict | null;
  /** The lead of the reading being entered that sits here. */
  readonly lead: "red" | "black" | null;
  /** What it carries now, while the machine is operated on the drawing. */
  readonly live: PointState | null;
}

/** What the job says of every cavity of a view, in the plug's own order. */
export function cavityFacts(
  job: Job,
  machine: Id,
  plug: Id,
  view: FaceView,
  analysis: CheckResult,
  leads: Pick<ReadingDraft, "red" | "black"> | null,
  live: LiveState | null = null,
): readonly CavityFacts[] {
  const pins = pinsByCavity(job.links);
  const roles = rolesByPin(analysis.roles);
  const seenColours = coloursByCavity(
    job.machines.find((one) => one.id === machine)?.wires ?? NO_WIRES,
  );
  const wanted = new Set(
    view.cavities.flatMap(({ mark }) => pins.get(cavityRef(plug, mark)) ?? []),
  );
  const drawnColours = new Map<PinRef, Colour>();
  for (const { colour, from, to } of drawnJob(job, machine).diagram.wires) {
    if (!colour) continue;
    if (wanted.has(from) && !drawnColours.has(from)) drawnColours.set(from, colour);
    if (wanted.has(to) && !drawnColours.has(to)) drawnColours.set(to, colour);
  }
  return view.cavities.map((seen): CavityFacts => {
    const ref = cavityRef(plug, seen.mark);
    const pin = pins.get(ref) ?? null;
    const onThis = seenColours.get(ref) ?? null;
    const drawn = pin ? (drawnColours.get(pin) ?? null) : null;
    return {
      ...seen,
      ref,
      state: seen.cavity.blocked ? "blocked" : seen.cavity.empty ? "empty" : "plain",
      colour: onThis ?? drawn,
      colourFrom: onThis ? "machine" : drawn ? "diagram" : null,
      pin,
      verdict: pin ? (roles.get(pin)?.verdict ?? null) : null,
      lead: leads?.red === ref ? "red" : leads?.black === ref ? "black" : null,
      // Where no wire can be there is nothing to carry.
      live: seen.cavity.blocked || seen.cavity.empty ? null : (live?.cavities[ref] ?? null),
    };
  });
}

const NO_WIRES: readonly MachineWire[] = [];

const pinsByCavity = keptOf(
  (links: Job["links"]) => new Map(links.map(({ cavity, pin }) => [cavity, pin])),
);

const coloursByCavity = keptOf(
  (wires: readonly MachineWire[]) => new Map(wires.map(({ cavity, colour }) => [cavity, colour])),
);

/** One cavity in words, for those who do not see the drawing. */
export function describeCavity(facts: CavityFacts): string {
  const colour = facts.colour ? nameColour(facts.colour) : null;
  const words = [
    `Cavity ${facts.mark}`,
    facts.state === "plain" ? null : facts.state,
    facts.colourFrom === "diagram" ? `${colour} on the diagram` : colour,
    facts.pin ? `tied to ${facts.pin}` : null,
    facts.live ? pointWords(facts.live) : facts.verdict,
    facts.lead ? `${facts.lead} lead` : null,
  ];
  return words.filter((word) => word !== null).join(", ");
}
