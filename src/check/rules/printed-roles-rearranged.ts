import type { PartOf } from "../../job/index.ts";
import { listAnd, meaningFits, printedWord, type Role } from "../../roles/index.ts";
import { cheapestAssignment } from "../assignment.ts";
import { defineRule, type Found } from "../rule.ts";

/** Costs: a word that stays and fits, one that moves and fits, one that must not. */
const STAYS = 0;
const MOVES = 1;
const NEVER = 1e6;
const MOST_WORDS = 150;
/** Breaks ties between equally short lists of moves in favour of near neighbours. */
const DISTANCE = 1e-4;

export const printedRolesRearranged = defineRule({
  id: "printed-roles-rearranged",
  severity: "warning",
  about: "module",
  find: ({ module, roles, words }) => rearranged(module, roles, words),
});

/** The fewest moves of printed words that leave no word of the module contradicted. */
function rearranged(
  module: PartOf<"module">,
  roles: readonly Role[],
  taught: Parameters<typeof printedWord>[1],
): readonly Found[] {
  if (!roles.some((role) => role.verdict === "contradicted")) return [];
  const words = module.pins.map((pin) => printedWord(pin, taught));
  const readable = roles.flatMap((_, index) =>
    (words[index]?.meanings.length ?? 0) > 0 ? [index] : [],
  );
  const wrong = readable.filter((index) => roles[index]?.verdict === "contradicted");
  // On a very large module only the wrong words are looked at: the search grows with the cube.
  const known = readable.length > MOST_WORDS ? wrong : readable;
  if (known.length > MOST_WORDS) return [];
  const fits = (word: number, place: number) => {
    const role = roles[place];
    return (
      role !== undefined &&
      (words[word]?.meanings ?? []).some((one) => meaningFits(one, role.fits, role.circuitSide))
    );
  };
  const cost = known.map((word) =>
    known.map((place) =>
      fits(word, place)
        ? word === place
          ? STAYS
          : MOVES + DISTANCE * Math.abs(word - place)
        : NEVER,
    ),
  );
  const places = cheapestAssignment(cost);
  const moves = places.flatMap((to, from) => {
    const word = known[from];
    const place = known[to];
    return word === undefined || place === undefined || word === place ? [] : [{ word, place }];
  });
  const impossible = places.some((to, from) => (cost[from]?.[to] ?? NEVER) >= NEVER);
  if (impossible || moves.length === 0) return [];
  const pin = (index: number) => roles[index]?.pin ?? "";
  const list = [...moves]
    .sort((a, b) => a.place - b.place)
    .map(
      ({ word, place }) => `${words[word]?.text} belongs to ${pin(place)} (stands at ${pin(word)})`,
    );
  return [
    {
      subjects: [module.id, ...moves.map(({ place }) => pin(place)).sort()],
      message: `The words of module ${module.label ?? module.id} are the right ones on the wrong pins. They fit so: ${listAnd(list)}.`,
    },
  ];
}
