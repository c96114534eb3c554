import { type EditOptions, type Job, splitRef } from "../../../job/index.ts";
import {
  drawnOf,
  renamePart,
  renamePin,
  type Session,
  setWords,
  whyNotId,
  whyNotPin,
} from "../../../session/index.ts";
import { formatColour, parseColour, whyNoColour } from "../../../standards/index.ts";

/** The two words that can be edited on the board itself: of a part, a module's pin or a wire. */
export interface Words {
  readonly title: string;
  readonly first: { readonly label: string; readonly value: string };
  readonly second: { readonly label: string; readonly value: string };
  /** Whether any text at all will do for the second word, so that each beginning of it does. */
  readonly secondIsFree: boolean;
  /** What is edited next when Enter is pressed; null when that is the end. */
  readonly next: string | null;
}

/** Null when nothing of that name has words. */
export function wordsOf(job: Job, ref: string): Words | null {
  const part = job.diagram.parts.find((one) => one.id === ref);
  if (part) {
    return {
      title: ref,
      first: { label: "Id", value: part.id },
      second: { label: "Label", value: part.label ?? "" },
      secondIsFree: true,
      next: null,
    };
  }
  const wire = job.diagram.wires.find((one) => one.id === ref);
  if (wire) {
    return {
      title: ref,
      first: { label: "Wire number", value: wire.number ?? "" },
      second: { label: "Colour", value: wire.colour ? formatColour(wire.colour) : "" },
      secondIsFree: false,
      next: null,
    };
  }
  const { owner, name } = splitRef(ref);
  const module = job.diagram.parts.find((one) => one.id === owner);
  if (module?.kind !== "module") return null;
  const index = module.pins.findIndex((pin) => pin.id === name);
  const pin = module.pins[index];
  if (!pin) return null;
  const after = module.pins[index + 1];
  return {
    title: `Pin ${name} of ${owner}`,
    first: { label: "Mark", value: pin.id },
    second: { label: "Printed word", value: pin.printed ?? "" },
    secondIsFree: true,
    next: after ? `${owner}:${after.id}` : null,
  };
}

/** Writes both words as one edit. Returns what is wrong with them, one sentence, or null. */
export function writeWords(
  session: Session,
  ref: string,
  first: string,
  second: string,
  merge?: EditOptions,
): string | null {
  const job = drawnOf(session.get());
  const part = job.diagram.parts.find((one) => one.id === ref);
  if (part) {
    const wrong = whyNotId(job, ref, first);
    if (wrong) return wrong;
    session.edit(
      `Rename ${ref}`,
      (draft) => {
        setWords(draft, ref, { label: second });
        renamePart(draft, ref, first);
      },
      merge,
    );
    follow(session, ref, first);
    return null;
  }
  if (job.diagram.wires.some((one) => one.id === ref)) {
    const colour = second === "" ? null : parseColour(second);
    if (second !== "" && !colour) return whyNoColour(second);
    session.edit(
      `Write on ${ref}`,
      (draft) => setWords(draft, ref, { number: first, colour }),
      merge,
    );
    return null;
  }
  const { owner, name } = splitRef(ref);
  const module = job.diagram.parts.find((one) => one.id === owner);
  if (module?.kind !== "module") return null;
  const wrong = whyNotPin(module, name, first);
  if (wrong) return wrong;
  session.edit(
    `Write on pin ${name} of ${owner}`,
    (draft) => {
      setWords(draft, ref, { printed: second });
      renamePin(draft, owner, name, first);
    },
    merge,
  );
  follow(session, ref, `${owner}:${first}`);
  return null;
}

/** What was chosen under the old name stays chosen under the new one. */
function follow(session: Session, old: string, next: string): void {
  const { selection } = session.get();
  if (old === next || !selection.includes(old)) return;
  session.show({ selection: selection.map((ref) => (ref === old ? next : ref)) });
}
