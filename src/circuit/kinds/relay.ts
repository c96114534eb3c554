import type { PartOf, PinId } from "../../job/index.ts";
import type { Element, PartKind, PinPlace, Stroke } from "./kind.ts";
import { ANY } from "./spread.ts";
import { box, circle, dashed, filled, line, text } from "./strokes.ts";

/** US MIL-R-83536/9 and /10: 80 Ω at 12 V, 320 Ω at 28 V. */
export const coilOhms = (systemVoltage: number): number =>
  Math.round(80 * (systemVoltage / 12) ** 2);

/** Shares of nominal: general practice is pull-in near 75 %, release at 10 to 25 %. */
const PULL_IN = 0.75;
const DROP_OUT = 0.2;

interface Pole {
  readonly common: PinId;
  readonly open: PinId;
  readonly closed: PinId;
}

/** The first set is 30, 87, 87a; further ones take a letter: 30b, 87b, 87ab. */
function polesOf(part: PartOf<"relay">): readonly Pole[] {
  return Array.from({ length: part.poles ?? 1 }, (_, index) => {
    const letter = index === 0 ? "" : String.fromCharCode("a".charCodeAt(0) + index);
    return { common: `30${letter}`, open: `87${letter}`, closed: `87a${letter}` };
  });
}

const poleX = (index: number): number => 2 + index * 5;

function pins(part: PartOf<"relay">): readonly PinPlace[] {
  return [
    { id: "86", at: [-3, -3] },
    { id: "85", at: [-3, 3] },
    ...polesOf(part).flatMap(({ common, open, closed }, index): PinPlace[] => [
      { id: common, at: [poleX(index), 3] },
      { id: closed, at: [poleX(index) - 1, -3] },
      { id: open, at: [poleX(index) + 1, -3] },
    ]),
  ];
}

function elements(part: PartOf<"relay">, systemVoltage: number): readonly Element[] {
  const pullIn = part.pullIn ?? PULL_IN;
  const contact = (closedWhen: "pulled" | "rested"): Element["law"] => ({
    is: "relay-contact",
    closedWhen,
    ...(part.contactAmps === undefined ? {} : { amps: part.contactAmps }),
  });
  return [
    {
      part: part.id,
      a: "85",
      b: "86",
      law: {
        is: "coil",
        ohms: part.coilOhms ?? coilOhms(systemVoltage),
        ...(part.coilOhms === undefined ? { unsaid: ANY.coil } : {}),
        ...(part.coilResistor === undefined ? {} : { parallelOhms: part.coilResistor }),
        ...(part.latching ? { latching: true } : {}),
        cathode: part.diodeCathode === "85" ? "a" : part.diodeCathode === "86" ? "b" : null,
        pullIn,
        // a coil that let go above what pulls it in would never hold
        dropOut: Math.min(part.dropOut ?? DROP_OUT, pullIn),
      },
    },
    ...polesOf(part).flatMap(({ common, open, closed }): Element[] => [
      {
        part: part.id,
        a: common,
        b: open,
        law: contact("pulled"),
      },
      {
        part: part.id,
        a: common,
        b: closed,
        law: contact("rested"),
      },
    ]),
  ];
}

/** Across the coil: a diode, its bar at the cathode, and outside of that a resistor. */
function suppression(part: PartOf<"relay">): readonly Stroke[] {
  const strokes: Stroke[] = [];
  const { diodeCathode, coilResistor } = part;
  if (diodeCathode) {
    const up = diodeCathode === "86" ? -1 : 1;
    strokes.push(
      line([-3, -2], [-5, -2], [-5, 2], [-3, 2]),
      filled([-5.6, -0.5 * up], [-4.4, -0.5 * up], [-5, 0.5 * up]),
      line([-5.6, 0.5 * up], [-4.4, 0.5 * up]),
    );
  }
  if (coilResistor !== undefined) {
    const x = diodeCathode ? -6.8 : -5;
    strokes.push(
      line([-3, -2], [x, -2], [x, -1]),
      box([x - 0.4, -1], [x + 0.4, 1]),
      line([x, 1], [x, 2], [-3, 2]),
    );
  }
  return strokes;
}

function draw(part: PartOf<"relay">): readonly Stroke[] {
  const poles = polesOf(part);
  const strokes: Stroke[] = [
    line([-3, -3], [-3, -1]),
    box([-4, -1], [-2, 1]),
    line([-4, 1], [-2, -1]),
    line([-3, 1], [-3, 3]),
    dashed([-2, 0], [poleX(poles.length - 1) - 0.4, 0]),
    ...suppression(part),
  ];
  poles.forEach((_, index) => {
    const x = poleX(index);
    strokes.push(
      line([x, 3], [x, 1.4]),
      circle([x, 1.4], 0.2),
      line([x, 1.4], [x - 1, -1.4]),
      line([x - 1, -3], [x - 1, -1.4]),
      line([x + 1, -3], [x + 1, -1.4]),
      circle([x + 1, -1.4], 0.2),
    );
  });
  strokes.push(text([-2.4, -2.3], "86", 1, "left"), text([-2.4, 2.3], "85", 1, "left"));
  return strokes;
}

export const relay: PartKind<"relay"> = {
  kind: "relay",
  title: "relay",
  letter: "K",
  defaults: (systemVoltage) => ({ coilOhms: coilOhms(systemVoltage) }),
  pins,
  elements,
  failures: [
    { mode: "open", in: ["coil"], strikes: "one", becomes: "open" },
    { mode: "shorted", in: ["coil"], strikes: "one", becomes: "joined" },
    { mode: "stuck-open", in: ["relay-contact"], strikes: "all", becomes: "held-rested" },
    { mode: "stuck-closed", in: ["relay-contact"], strikes: "all", becomes: "held-pulled" },
    { mode: "high-resistance", in: ["relay-contact"], strikes: "one", becomes: "extra-ohms" },
    { mode: "leaky", in: ["relay-contact"], strikes: "one", becomes: "leak" },
  ],
  draw,
};
