import { springPositions } from "../../circuit/index.ts";
import type { Id, Job, PartOf, PinId, Position, When } from "../../job/index.ts";
import { draftPart } from "./draft.ts";
import { renamePositionInSteps } from "./recorded-steps.ts";
import { changePart } from "./set-field.ts";

type Switch = PartOf<"switch">;

function changeSwitch(draft: Job, id: Id, change: (part: Switch) => void): void {
  changePart(draft, id, () => {
    const part = draftPart(draft, id);
    if (part?.kind === "switch") change(part);
  });
}

/** Adds a position after the others; nothing happens when it is there already or has no name. */
export function addPosition(draft: Job, id: Id, name: Position): void {
  changeSwitch(draft, id, (part) => {
    if (name !== "" && !part.positions.includes(name)) part.positions.push(name);
  });
}

/** Takes a position out everywhere; the last one stays. */
export function removePosition(draft: Job, id: Id, name: Position): void {
  changeSwitch(draft, id, (part) => {
    if (part.positions.length < 2) return;
    const without = (list: readonly Position[]) => list.filter((one) => one !== name);
    part.positions = without(part.positions);
    for (const contact of part.contacts) contact.closedIn = without(contact.closedIn);
    if (part.rest === name) delete part.rest;
    if (Array.isArray(part.springReturn)) part.springReturn = without(part.springReturn);
  });
}

/** Renames a position in the switch, in the conditions of readings and trials, and in recorded plays. */
export function renamePosition(draft: Job, id: Id, old: Position, name: Position): void {
  let done = false;
  changeSwitch(draft, id, (part) => {
    if (name === "" || part.positions.includes(name) || !part.positions.includes(old)) return;
    const renamed = (list: readonly Position[]) => list.map((one) => (one === old ? name : one));
    part.positions = renamed(part.positions);
    for (const contact of part.contacts) contact.closedIn = renamed(contact.closedIn);
    if (part.rest === old) part.rest = name;
    if (Array.isArray(part.springReturn)) part.springReturn = renamed(part.springReturn);
    done = true;
  });
  if (!done) return;
  for (const machine of draft.machines) {
    for (const { when } of [...machine.readings, ...machine.trials] as { when: When }[]) {
      if (when.switches?.[id] === old) when.switches[id] = name;
    }
  }
  renamePositionInSteps(draft, id, old, name);
}

/** Whether the switch leaves a position by itself. A plain `true` is written out first. */
export function setSpring(draft: Job, id: Id, position: Position, springs: boolean): void {
  changeSwitch(draft, id, (part) => {
    const next = springPositions(part).filter((one) => one !== position);
    if (springs) next.push(position);
    if (next.length > 0) part.springReturn = next;
    else delete part.springReturn;
  });
}

/** Adds a contact between two pins that are new, closed in no position yet. */
export function addContact(draft: Job, id: Id): void {
  changeSwitch(draft, id, (part) => {
    const taken = new Set<PinId>(part.contacts.flatMap((contact) => contact.between));
    const next = (): PinId => {
      let number = 1;
      while (taken.has(String(number))) number++;
      taken.add(String(number));
      return String(number);
    };
    part.contacts.push({ between: [next(), next()], closedIn: [] });
  });
}

export function removeContact(draft: Job, id: Id, index: number): void {
  changeSwitch(draft, id, (part) => {
    part.contacts.splice(index, 1);
  });
}

/** Puts one end of a contact on another pin: one that exists makes them share it. */
export function setContactPin(draft: Job, id: Id, index: number, end: 0 | 1, pin: PinId): void {
  changeSwitch(draft, id, (part) => {
    const contact = part.contacts[index];
    if (!contact || pin === "" || contact.between[end === 0 ? 1 : 0] === pin) return;
    contact.between[end] = pin;
  });
}

export function setClosedIn(
  draft: Job,
  id: Id,
  index: number,
  position: Position,
  closed: boolean,
): void {
  changeSwitch(draft, id, (part) => {
    const contact = part.contacts[index];
    if (!contact) return;
    const others = contact.closedIn.filter((one) => one !== position);
    contact.closedIn = closed ? [...others, position] : others;
  });
}
