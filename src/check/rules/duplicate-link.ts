import { defineRule, type Found } from "../rule.ts";

export const duplicateLink = defineRule({
  id: "duplicate-link",
  severity: "contradiction",
  about: "links",
  find: ({ links }) => {
    const cavitiesOf = new Map<string, string[]>();
    const pinsOf = new Map<string, string[]>();
    for (const { pin, cavity } of links) {
      cavitiesOf.set(pin, [...(cavitiesOf.get(pin) ?? []), cavity]);
      pinsOf.set(cavity, [...(pinsOf.get(cavity) ?? []), pin]);
    }
    const twice = (what: "Pin" | "Cavity", from: string, to: readonly string[]): Found => ({
      subjects: [from, ...to],
      corrections: [...new Set(to)].map((one) =>
        what === "Pin"
          ? { does: "keep-link", pin: from, cavity: one }
          : { does: "keep-link", pin: one, cavity: from },
      ),
      message: `${what} ${from} is tied ${to.length} times: to ${to.join(" and ")}. Undo all but one.`,
    });
    return [
      ...[...cavitiesOf]
        .filter(([, to]) => to.length > 1)
        .map(([pin, to]) => twice("Pin", pin, to)),
      ...[...pinsOf]
        .filter(([, to]) => to.length > 1)
        .map(([cavity, to]) => twice("Cavity", cavity, to)),
    ];
  },
});
