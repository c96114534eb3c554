import { listAnd, listOr } from "../../roles/index.ts";
import { provedBy } from "../proof.ts";
import type { Found, ModuleView } from "../rule.ts";
import type { AcrossModules } from "./across-modules.ts";
import type { Move, Rearrangement } from "./rearrangement.ts";
import { inPairs, slipInWords } from "./slip-words.ts";
import type { Place } from "./word-column.ts";

/** A list longer than this is read by nobody. */
const MOST_LISTED = 4;
const MOST_CHOICES = 3;

export function toldOf({ module }: ModuleView, found: Rearrangement): Found {
  const name = module.label ?? module.id;
  const told = tell(found);
  return {
    subjects: [module.id, ...told.places.map(({ role }) => role.pin).sort()],
    message: `The words of module ${name} ${told.message}`,
    ...provedBy(told.places.flatMap(({ role }) => role.because)),
    ...(told.isSure && found.is !== "tied" ? correction(module.id, found.moves) : {}),
  };
}

export function toldAcross({ module }: ModuleView, found: AcrossModules): Found {
  const { other, orAll } = found;
  const [a, b] = [module, other.module].map(({ id, label }) => label ?? id);
  const also = orAll
    ? " They would fit as well, with more of them moved, if all words of the one module were exchanged with those of the other."
    : "";
  const told = found.is === "tied" ? tiedAcross(found) : exchangedAcross(found, [a ?? "", b ?? ""]);
  const isSure = found.is !== "tied" && found.isSure;
  return {
    subjects: [module.id, other.module.id, ...told.places.map(({ role }) => role.pin).sort()],
    message: `${found.is === "tied" ? `The wrong words of modules ${a} and ${b} ` : ""}${told.message}${also}`,
    ...provedBy(told.places.flatMap(({ role }) => role.because)),
    ...(isSure ? acrossCorrection(found.moves) : {}),
  };
}

function exchangedAcross(
  { is, moves, isSure }: Exclude<AcrossModules, { readonly is: "tied" }>,
  [a, b]: readonly [string, string],
): Omit<Told, "isSure"> {
  const are = isSure ? "are" : "may be";
  const what = {
    "one-word": `A word of module ${a} and one of module ${b} ${are} exchanged: each fits where the other stands.`,
    "wrong-words": `Words of modules ${a} and ${b} ${are} exchanged: each fits where another of them stands.`,
    "all-words": `The words of modules ${a} and ${b} ${are} exchanged: each one's fit the other's pins, in their order.`,
  }[is];
  const open = isSure ? "" : " The circuit can't tell whether it was this or something else.";
  return { message: `${what} ${fitSo(moves)}${open}`, places: inOrder(moves) };
}

function tiedAcross({
  column,
  count,
  choices,
}: Extract<AcrossModules, { readonly is: "tied" }>): Omit<Told, "isSure"> {
  const { settled, open } = choicesAt(column, choices);
  const sentences = [
    `may be one another's: moving ${count} of them leaves none contradicted, in more than one way, and the circuit can't tell which.`,
    ...sureAndNot(settled, open),
  ];
  return {
    message: sentences.filter(Boolean).join(" "),
    places: [...settled, ...open].map(({ place }) => place),
  };
}

interface Told {
  readonly message: string;
  /** Nothing else is as likely. */
  readonly isSure: boolean;
  /** Every place that changes its word, or may. */
  readonly places: readonly Place[];
}

function tell(found: Rearrangement): Told {
  switch (found.is) {
    case "sure":
      return sure(found);
    case "off-by-one":
      return {
        message: `are the right ones on the wrong pins: all words are shifted by one pin, and the one pushed off the end is not printed. ${fitSo(found.moves)}`,
        isSure: true,
        places: inOrder(found.moves),
      };
    case "tied":
      return tied(found);
  }
}

function sure({
  column,
  moves,
  slip,
  otherwise,
}: Extract<Rearrangement, { readonly is: "sure" }>): Told {
  const how = slip ? slipInWords(slip, column) : inPairs(moves);
  const also = otherwise
    ? ` They would fit as well, with more of them moved, if ${slipInWords(otherwise, column)}.`
    : "";
  const alone = onlyWrong(column);
  const is = alone === null ? "are" : "may be";
  return {
    message: `${is} the right ones on the wrong pins${how ? `: ${how}` : ""}. ${fitSo(moves)}${also}${orJustWrong(alone)}`,
    isSure: alone === null,
    places: inOrder(moves),
  };
}

/** The only contradicted word; null where there are more, which something common to them explains better. */
const onlyWrong = (column: readonly Place[]): Place | null => {
  const [only, ...more] = column.filter(({ isWrong }) => isWrong);
  return only && more.length === 0 ? only : null;
};

const orJustWrong = (alone: Place | null) =>
  alone ? ` Or else ${alone.text} at ${alone.role.pin} is just wrong.` : "";

function tied({
  column,
  count,
  choices,
  slip,
}: Extract<Rearrangement, { readonly is: "tied" }>): Told {
  const { settled, open } = choicesAt(column, choices);
  const places = [...settled, ...open].map(({ place }) => place);
  const alone = onlyWrong(column);
  if (alone && count === 2) {
    const others = open.filter(({ place }) => place !== alone).map(({ place }) => place.role.pin);
    return {
      message: `may be the right ones on the wrong pins: ${alone.text} at ${alone.role.pin} and the word of another pin may be exchanged, and the circuit can't tell which of them: ${listed(others)}.${orJustWrong(alone)}`,
      isSure: false,
      places,
    };
  }
  const sentences = [
    `may be the right ones on the wrong pins: moving ${count} of them leaves none contradicted, in more than one way, and the circuit can't tell which.`,
    ...sureAndNot(settled, open),
    slip ? `The only single slip among them: ${slipInWords(slip, column)}.` : "",
  ];
  return {
    message: `${sentences.filter(Boolean).join(" ")}${orJustWrong(alone)}`,
    isSure: false,
    places,
  };
}

/** A place that changes its word, or may, with the words that may come to stand there. */
interface Choice {
  readonly place: Place;
  readonly words: readonly string[];
}

function choicesAt(column: readonly Place[], choices: readonly (readonly string[])[]) {
  const at = column.map((place, index): Choice => ({ place, words: choices[index] ?? [] }));
  return {
    settled: at.filter(({ place, words }) => words.length === 1 && words[0] !== place.text),
    open: at.filter(({ words }) => words.length > 1),
  };
}

const sureAndNot = (settled: readonly Choice[], open: readonly Choice[]): readonly string[] => [
  settled.length > 0
    ? `Sure: ${listed(settled.map(({ place, words }) => `${words[0]} belongs to ${place.role.pin}`))}.`
    : "",
  `Not sure: ${listed(open.map(({ place, words }) => `${place.role.pin} takes ${choiceOf(words)}`))}.`,
];

const choiceOf = (words: readonly string[]) =>
  words.length > MOST_CHOICES ? `one of ${words.length} words` : listOr(words);

const listed = (things: readonly string[]) =>
  things.length > MOST_LISTED
    ? `${things.slice(0, MOST_LISTED).join(", ")} and ${things.length - MOST_LISTED} more`
    : listAnd(things);

const fitSo = (moves: readonly Move[]) =>
  `They fit so: ${listAnd(
    moves
      .toSorted((a, b) => order(a.to, b.to))
      .map(({ from, to }) => `${from.text} belongs to ${to.role.pin} (stands at ${from.role.pin})`),
  )}.`;

/** As the pins of a module stand, and one module after the other. */
const order = (a: Place, b: Place) =>
  a.module === b.module
    ? a.module.pins.findIndex(({ id }) => id === a.pin) -
      b.module.pins.findIndex(({ id }) => id === b.pin)
    : a.module.id < b.module.id
      ? -1
      : 1;

/** Every place that a word leaves or comes to, each once. */
const inOrder = (moves: readonly Move[]): readonly Place[] => [
  ...new Set(moves.flatMap(({ from, to }) => [to, from])),
];

const correction = (module: string, moves: readonly Move[]): Pick<Found, "corrections"> => ({
  corrections: [
    {
      does: "move-words",
      module,
      moves: moves.map(({ from, to }) => ({ from: from.pin, to: to.pin, word: from.text ?? "" })),
    },
  ],
});

const acrossCorrection = (moves: readonly Move[]): Pick<Found, "corrections"> => ({
  corrections: [
    {
      does: "move-words-across",
      moves: moves.map(({ from, to }) => ({
        from: from.role.pin,
        to: to.role.pin,
        word: from.text ?? "",
      })),
    },
  ],
});
