import { expect, test } from "vitest";
import { seededRandom } from "../../../src/base/index.ts";
import { checkJob, type WordMove } from "../../../src/check/index.ts";
import type { Job } from "../../../src/job/index.ts";
import { correctJob } from "../../support/paper-jobs/correct-job.ts";
import { PRINTED_WORDS } from "../../support/paper-jobs/disagreements/printed-words.ts";
import { type PaperJob, pinsOfModule } from "../../support/paper-jobs/paper-job.ts";
import { mayStand, wordOf } from "../../support/paper-jobs/words.ts";
import { orders } from "./columns.ts";

const RULE = "printed-roles-rearranged";
/** More words than this have too many orders to try. */
const MOST_TRIED = 7;

/** By trying every order: in how many ways as few words as can be are moved. */
function waysToMoveFewest(paper: PaperJob, module: string): number | null {
  const part = paper.job.diagram.parts.find(({ id }) => id === module);
  if (part?.kind !== "module") return null;
  const placed = pinsOfModule(paper, module).flatMap((pin, index) => {
    const word = wordOf(part.pins[index]?.printed);
    return word ? [{ pin, word }] : [];
  });
  if (placed.length > MOST_TRIED) return null;
  const byCount = new Map<number, Set<string>>();
  for (const order of orders(placed.length)) {
    const said: string[] = [];
    const isRight = order.every((to, from) => {
      const [word, pin] = [placed[from]?.word, placed[to]?.pin];
      if (!word || !pin || !mayStand(word, pin)) return false;
      said[to] = word.text;
      return true;
    });
    if (!isRight) continue;
    const count = order.filter((to, from) => to !== from).length;
    byCount.set(count, (byCount.get(count) ?? new Set()).add(said.join("|")));
  }
  const fewest = Math.min(...byCount.keys());
  return byCount.get(fewest)?.size ?? 0;
}

function moved(job: Job, module: string, moves: readonly WordMove[]): Job {
  const parts = job.diagram.parts.map((part) => {
    if (part.kind !== "module" || part.id !== module) return part;
    const pins = part.pins.map(({ printed, ...pin }) => {
      const comes = moves.find(({ to }) => to === pin.id);
      if (comes) return { ...pin, printed: comes.word };
      const leaves = moves.some(({ from }) => from === pin.id);
      return printed === undefined || leaves ? pin : { ...pin, printed };
    });
    return { ...part, pins };
  });
  return { ...job, diagram: { ...job.diagram, parts } };
}

test("what is offered leaves no word contradicted, and a tie is one", { timeout: 120_000 }, () => {
  const seen = { corrected: 0, tied: 0, only: 0 };
  for (let seed = 1; seed <= 150; seed++) {
    const paper = correctJob(seed);
    PRINTED_WORDS[seed % PRINTED_WORDS.length]?.inject(seededRandom(seed), paper);
    const { job } = paper;
    const [found] = checkJob(job, "machine1").findings.filter(({ rule }) => rule === RULE);
    if (!found) continue;
    const module = found.subjects[0] ?? "";
    const ways = waysToMoveFewest(paper, module);
    const isTold = (text: string) => found.message.includes(text);
    if (isTold("can't tell which")) {
      if (ways !== null) expect(ways, `seed ${seed}: ${found.message}`).toBeGreaterThan(1);
      seen.tied++;
    } else if (!isTold("not printed") && ways !== null) {
      expect(ways, `seed ${seed}: ${found.message}`).toBe(1);
      seen.only++;
    }
    for (const correction of found.corrections ?? []) {
      if (correction.does !== "move-words") continue;
      const { roles } = checkJob(moved(job, module, correction.moves), "machine1");
      const wrong = roles.filter(({ verdict }) => verdict === "contradicted");
      expect(
        wrong.map(({ pin }) => pin),
        `seed ${seed}`,
      ).toEqual([]);
      seen.corrected++;
    }
  }
  expect(Math.min(seen.corrected, seen.tied, seen.only), JSON.stringify(seen)).toBeGreaterThan(3);
});
