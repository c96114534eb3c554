import {
  type Id,
  type Job,
  type Part,
  type PinId,
  pinRef,
  splitRef,
  type When,
} from "../../job/index.ts";
import { idsInUse } from "../changes/drawn-job.ts";
import { draftPart, plain } from "./draft.ts";
import { rewritePinRefs, rewriteSetAside } from "./every-ref.ts";
import { renameInSteps } from "./recorded-steps.ts";

/** Why `id` can't be the new id of `old`; null when it can. One sentence for the user. */
export function whyNotId(job: Job, old: Id, id: Id): string | null {
  if (id === old) return null;
  if (id === "") return "An id may not be empty.";
  if (id.includes(":")) return "An id holds no colon: the colon stands before a pin.";
  if (id.length > 200) return "An id has at most 200 characters.";
  if (id.startsWith("battery+") || id.startsWith("battery-") || id === "chassis") {
    return `"${id}" is the name of a place to hold a probe to.`;
  }
  return idsInUse(job).has(id) ? `${id} is in use already.` : null;
}

const swap = (list: string[] | undefined, old: string, next: string) => {
  const index = list?.indexOf(old) ?? -1;
  if (list && index >= 0) list[index] = next;
};

function renameInWhen(when: When, old: Id, next: Id): void {
  if (when.switches && old in when.switches) {
    // in its place: a trial is done in the order in which its switches are listed
    const entries = Object.entries<string>(when.switches);
    when.switches = Object.fromEntries(
      entries.map(([id, position]) => [id === old ? next : id, position]),
    );
  }
  swap(when.unplugged, old, next);
  swap(when.removed, old, next);
}

/** Gives a part another id, everywhere the job speaks of it. The caller has asked `whyNotId`. */
export function renamePart(draft: Job, old: Id, next: Id): void {
  const part = draftPart(draft, old);
  if (!part || old === next) return;
  part.id = next;
  rewritePinRefs(draft, (ref) => {
    const { owner, name } = splitRef(ref);
    return owner === old && ref !== old ? pinRef(next, name) : ref;
  });
  for (const machine of draft.machines) {
    for (const reading of machine.readings) renameInWhen(reading.when, old, next);
    for (const trial of machine.trials) {
      renameInWhen(trial.when as When, old, next);
      for (const seen of trial.saw) if (seen.part === old) seen.part = next;
    }
    for (const change of machine.changes ?? []) swap(change.without, old, next);
  }
  rewriteSetAside(draft, (ref) => (ref === old ? next : ref));
  renameInSteps(draft, old, next);
  for (const standIn of draft.standIns ?? []) if (standIn.replaces === old) standIn.replaces = next;
}

/** Why `pin` can't be the new id of a pin of this part; null when it can. */
export function whyNotPin(part: Part, old: PinId, pin: PinId): string | null {
  if (pin === old) return null;
  if (pin === "") return "A pin needs a mark.";
  return listedPins(part).includes(pin) ? `${part.id} has a pin ${pin} already.` : null;
}

/** The pins of kinds that list their own. */
function listedPins(part: Part): readonly PinId[] {
  if (part.kind === "module" || part.kind === "inline") return part.pins.map((pin) => pin.id);
  return part.kind === "switch" ? part.contacts.flatMap((contact) => contact.between) : [];
}

/** Gives a pin of a module, switch or inline plug another id, everywhere. */
export function renamePin(draft: Job, id: Id, old: PinId, next: PinId): void {
  const part = draftPart(draft, id);
  if (!part || old === next || !listedPins(plain(part)).includes(old)) return;
  if (part.kind === "module" || part.kind === "inline") {
    for (const pin of part.pins) if (pin.id === old) pin.id = next;
  }
  if (part.kind === "switch") for (const { between } of part.contacts) swap(between, old, next);
  if (part.kind === "module") {
    swap(part.power?.supply, old, next);
    swap(part.power?.ground, old, next);
    for (const { between } of part.sources ?? []) swap(between, old, next);
    for (const { between } of part.behaviour?.loads ?? []) swap(between, old, next);
    for (const path of part.behaviour?.paths ?? []) {
      swap(path.between, old, next);
      if (path.input === old) path.input = next;
    }
  }
  const before = pinRef(id, old);
  rewritePinRefs(draft, (ref) => (ref === before ? pinRef(id, next) : ref));
}
