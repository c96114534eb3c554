import { expect, test } from "vitest";
import { type Random, seededRandom } from "../../../src/base/index.ts";
import { checkJob, type Finding } from "../../../src/check/index.ts";
import type { Job } from "../../../src/job/index.ts";
import { meaningFits, type Role, readWord } from "../../../src/roles/index.ts";
import { correct, createSession } from "../../../src/session/index.ts";
import { withBattery } from "../../support/circuit-builder.ts";

const RULE = "printed-roles-rearranged";
/** What may be printed beside a pin of each kind. */
const WORDS = {
  feed: ["PWR", "B+"],
  ground: ["GND", "GROUND"],
  key: ["IGN", "RUN"],
  contact: ["IN", "STOP", "SW"],
  lamp: ["OUT", "LAMP", "STOP"],
} as const;
const PINS = {
  A1: ["feed", "ground", "key", "contact", "lamp"],
  A2: ["ground", "feed", "lamp", "lamp", "contact"],
} as const;

function twoModules(words: readonly string[]): Job {
  const circuit = withBattery()
    .part("fuse", "F1", { amps: 10 })
    .part("fuse", "F2", { amps: 10 })
    .key("S1")
    .wire("G1:+ F1:1", "F1:2 S1:30", "S1:15 F2:1");
  for (const [at, id] of (["A1", "A2"] as const).entries()) {
    const own = words.slice(5 * at, 5 * at + 5);
    circuit.module(id, Object.fromEntries(own.map((word, index) => [String(index + 1), word])));
    for (const [index, kind] of PINS[id].entries()) {
      const pin = `${id}:${index + 1}`;
      const part = `${id}_${index + 1}`;
      if (kind === "feed") circuit.wire(`F1:2 ${pin}`);
      else if (kind === "ground") circuit.wire(`${pin} GND1:1`);
      else if (kind === "key") circuit.wire(`F2:2 ${pin}`);
      else if (kind === "contact")
        circuit.contact(`S_${part}`, "operator").wire(`F1:2 S_${part}:1`, `S_${part}:2 ${pin}`);
      else
        circuit
          .part("lamp", `P_${part}`, { watts: 5 })
          .wire(`${pin} P_${part}:1`, `P_${part}:2 GND1:1`);
    }
  }
  return circuit.job;
}

/** Right words, of which two to five have changed places or all have changed the module; now and then one is another. */
function misprinted(random: Random): Job {
  const words = [...PINS.A1, ...PINS.A2].map((kind) => random.pick<string>(WORDS[kind]));
  if (random.chance(0.45)) words.push(...words.splice(0, PINS.A1.length));
  else {
    const places = Array.from({ length: random.below(4) + 2 }, () => random.below(words.length));
    for (const [index, place] of places.entries()) {
      const other = places[index + 1];
      const [a, b] = [words[place], words[other ?? place]];
      if (other === undefined || a === undefined || b === undefined) break;
      words[place] = b;
      words[other] = a;
    }
  }
  if (random.chance(0.1)) words[random.below(words.length)] = "GND";
  return twoModules(words);
}

interface Word {
  readonly role: Role;
  readonly text: string;
}

const mayStand = (text: string, { fits, circuitSide }: Role) =>
  readWord(text).some((meaning) => meaningFits(meaning, fits, circuitSide));

const meaningOf = (text: string | undefined) =>
  JSON.stringify(
    readWord(text ?? "")
      .map(({ role, side }) => `${role} ${side}`)
      .sort(),
  );

/** By trying: what stands at each place in every way that leaves no word contradicted. */
function ways(words: readonly Word[]): readonly (readonly string[])[] {
  const found = new Map<string, readonly string[]>();
  const place = (said: readonly string[], left: readonly string[]) => {
    const next = words[said.length];
    if (!next) found.set(said.join("|"), said);
    else
      for (const text of new Set(left))
        if (mayStand(text, next.role))
          place([...said, text], left.toSpliced(left.indexOf(text), 1));
  };
  place(
    [],
    words.map(({ text }) => text),
  );
  return [...found.values()];
}

const isAcross = ({ message }: Finding) => /modules? A1 and (?:one of module )?A2/.test(message);

const printedOf = (job: Job): ReadonlyMap<string, string> =>
  new Map(
    job.diagram.parts.flatMap((part) =>
      part.kind === "module"
        ? part.pins.map(({ id, printed }) => [`${part.id}:${id}`, printed ?? ""] as const)
        : [],
    ),
  );

test("of two modules' wrong words every way is known, and a correction is the only one in meaning", {
  timeout: 120_000,
}, () => {
  const seen = { none: 0, only: 0, sameMeaning: 0, tied: 0, whole: 0 };
  for (let seed = 1; seed <= 400; seed++) {
    const job = misprinted(seededRandom(seed));
    const { roles, findings } = checkJob(job, "machine1");
    const words = roles.map((role): Word => ({ role, text: role.printed ?? "" }));
    const [mine, theirs] = ["A1:", "A2:"].map((owner) =>
      words.filter(({ role }) => role.pin.startsWith(owner)),
    ) as [Word[], Word[]];
    const isWrong = ({ role }: Word) => role.verdict === "contradicted";
    const [found, ...more] = findings.filter((one) => one.rule === RULE && isAcross(one));
    expect(more).toEqual([]);
    const context = `seed ${seed}: ${words.map(({ role, text }) => `${role.pin} ${text}`).join(", ")}; ${found?.message}`;
    if (![mine, theirs].every((own) => own.some(isWrong) && ways(own).length === 0)) {
      expect(found, context).toBeUndefined();
      continue;
    }
    const wrong = [...mine, ...theirs].filter(isWrong);
    const tried = ways(wrong);
    const isWhole = mine.every((one, index) => {
      const other = theirs[index] as Word;
      const isSame = one.text === other.text;
      return isSame
        ? !isWrong(one) && !isWrong(other)
        : mayStand(one.text, other.role) && mayStand(other.text, one.role);
    });
    expect(found !== undefined, context).toBe(tried.length > 0 || isWhole);
    if (!found) {
      seen.none++;
      continue;
    }
    const meanings = new Set(tried.map((texts) => texts.map(meaningOf).join("|")));
    const [correction] = found.corrections ?? [];
    if (isWhole && found.message.includes("in their order")) seen.whole++;
    if (!correction) {
      expect(tried.length, context).not.toBe(1);
      seen.tied++;
      continue;
    }
    expect(meanings.size, context).toBe(1);
    const session = createSession(`k${seed}`, job);
    correct(session, correction);
    const after = session.get().job;
    expect(
      checkJob(after, "machine1").roles.filter(({ verdict }) => verdict === "contradicted"),
      context,
    ).toEqual([]);
    const now = printedOf(after);
    const said = wrong.map(({ role }) => now.get(role.pin) ?? "");
    expect(tried, context).toContainEqual(said);
    expect([...now.values()].sort(), context).toEqual([...printedOf(job).values()].sort());
    if (tried.length === 1) seen.only++;
    else seen.sameMeaning++;
    session.undo();
    expect(session.get().job).toEqual(job);
  }
  expect(Math.min(...Object.values(seen)), JSON.stringify(seen)).toBeGreaterThan(2);
});
