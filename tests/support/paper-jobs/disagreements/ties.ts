import type { PaperJob } from "../paper-job.ts";
import {
  cavityAt,
  type Disagreement,
  forgetReadings,
  moduleOf,
  ownerOf,
  plugWith,
  type Tied,
  wiredPins,
} from "./disagreement.ts";

const tiesOf = ({ job }: PaperJob, plug: string) =>
  job.links.filter(({ cavity }) => ownerOf(cavity) === plug).length;

/** Somewhere beside all other cavities of the plug. */
const beside = (paper: PaperJob, { cavity }: Tied): [number, number] => [
  5 + Math.max(...plugWith(paper, cavity).cavities.map(({ at }) => at[0])),
  0,
];

export const TIES: readonly Disagreement[] = [
  {
    name: "a tie left out",
    inject(random, paper) {
      const some = wiredPins(paper).filter(({ cavity }) => tiesOf(paper, ownerOf(cavity)) > 1);
      if (some.length === 0) return null;
      const { pin, cavity } = random.pick(some);
      paper.job.links = paper.job.links.filter((link) => link.pin !== pin);
      forgetReadings(paper, [cavity]);
      return [`pin-without-cavity ${pin}`, `cavity-without-pin ${cavity}`];
    },
  },
  {
    name: "a cavity that is empty",
    inject(random, paper) {
      const { cavity } = random.pick(wiredPins(paper));
      Object.assign(cavityAt(paper, cavity), random.pick([{ empty: true }, { blocked: true }]));
      return [`cavity-empty ${cavity}`];
    },
  },
  {
    name: "a cavity more than pins",
    inject(random, paper) {
      const pin = random.pick(wiredPins(paper));
      const plug = plugWith(paper, pin.cavity);
      plug.cavities.push({ mark: "99", at: beside(paper, pin) });
      return [`cavity-without-pin ${plug.id}:99`];
    },
  },
  {
    name: "one mark twice",
    inject(random, paper) {
      const pin = random.pick(wiredPins(paper));
      const plug = plugWith(paper, pin.cavity);
      plug.cavities.push({ ...cavityAt(paper, pin.cavity), at: beside(paper, pin) });
      return [`duplicate-mark ${pin.cavity}`];
    },
  },
  {
    name: "one pin tied twice",
    inject(random, paper) {
      const pin = random.pick(wiredPins(paper));
      const plug = plugWith(paper, pin.cavity);
      plug.cavities.push({ mark: "99", at: beside(paper, pin) });
      const link = { pin: pin.pin, cavity: `${plug.id}:99` };
      if (random.chance(0.5)) paper.job.links.push(link);
      else paper.job.links.unshift(link);
      return [`duplicate-link ${pin.pin}`];
    },
  },
  {
    name: "one cavity tied twice",
    inject(random, paper) {
      const { pin, cavity } = random.pick(wiredPins(paper));
      const module = ownerOf(pin);
      moduleOf(paper, module).pins.push({ id: "99" });
      const link = { pin: `${module}:99`, cavity };
      if (random.chance(0.5)) paper.job.links.push(link);
      else paper.job.links.unshift(link);
      forgetReadings(paper, [cavity]);
      return [`duplicate-link ${cavity}`];
    },
  },
];
