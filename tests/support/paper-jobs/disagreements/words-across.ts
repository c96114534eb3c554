/** Words of two modules that stand at one another's pins. */
import type { Random } from "../../../../src/base/index.ts";
import type { PartOf } from "../../../../src/job/index.ts";
import { modulesOf, type PaperJob, pinsOfModule } from "../paper-job.ts";
import { type Disagreement, type Expected, moduleOf } from "./disagreement.ts";
import {
  type Printed,
  printWords,
  textsOf,
  untiedFindings,
  wordFindings,
} from "./printed-words.ts";

/** The words of both after the exchange; null where there is nothing to exchange. */
type Exchange = (
  random: Random,
  one: Printed,
  other: Printed,
) => readonly [Printed, Printed] | null;

const someWord = (random: Random, words: Printed): number =>
  random.pick(words.flatMap((word, index) => (word === null ? [] : [index])));

const oneOfEach: Exchange = (random, one, other) => {
  const [from, to] = [someWord(random, one), someWord(random, other)];
  return [one.with(from, other[to] ?? null), other.with(to, one[from] ?? null)];
};

/** Pin by pin; where one of the two says nothing neither does. */
const allOfBoth: Exchange = (_, one, other) => {
  if (one.length !== other.length) return null;
  const isSaid = (index: number) => one[index] != null && other[index] != null;
  return [
    other.map((word, index) => (isSaid(index) ? word : null)),
    one.map((word, index) => (isSaid(index) ? word : null)),
  ];
};

const exchanging = (name: string, exchange: Exchange): Disagreement => ({
  name,
  forgetsReadings: true,
  inject(random, paper) {
    const [first, ...more] = modulesOf(paper).map((id) => moduleOf(paper, id));
    if (!first || more.length === 0) return null;
    const second = random.pick(more);
    if (![first, second].every((one) => textsOf(one).some((word) => word !== null))) return null;
    const words = exchange(random, textsOf(first), textsOf(second));
    if (words === null) return null;
    return exchanged(paper, [first, second], words);
  },
});

function exchanged(
  paper: PaperJob,
  modules: readonly [PartOf<"module">, PartOf<"module">],
  words: readonly [Printed, Printed],
): Expected | null {
  const each = modules.map((module, index) => {
    const own = words[index] ?? [];
    printWords(module, own);
    return wordFindings(module.id, pinsOfModule(paper, module.id), own);
  });
  // where its own words would put either right, nobody has to look further
  const isAcross = each.every(
    (own) => own.length > 0 && !own.some((one) => one.startsWith("printed-roles-rearranged ")),
  );
  const untied = modules.flatMap(({ id }, index) =>
    untiedFindings(pinsOfModule(paper, id), words[index] ?? []),
  );
  const expected = [
    ...each.flat(),
    ...(isAcross ? [`printed-roles-rearranged ${modules[0].id}`] : []),
    ...untied,
  ];
  return expected.length === 0 ? null : expected;
}

export const WORDS_ACROSS: readonly Disagreement[] = [
  exchanging("a word of one module exchanged with one of another", oneOfEach),
  exchanging("all words of two modules exchanged", allOfBoth),
];
