/** A drawing that is right: one to three modules, each wired by recipes, with plugs and ties. */
import type { Random } from "../../../src/base/index.ts";
import type { Plug } from "../../../src/job/index.ts";
import {
  batteryFeed,
  FEED_RECIPES,
  feedByContact,
  ground,
  groundByContact,
  keyFeed,
} from "./feed-recipes.ts";
import { dataLines, LOAD_RECIPES } from "./load-recipes.ts";
import { Loom } from "./loom.ts";
import { ModuleDraft } from "./module-draft.ts";
import type { FreeLoad, PaperJob, TruePin } from "./paper-job.ts";
import { plugFace } from "./plug-face.ts";
import { mayStand, WORDS } from "./words.ts";

export function drawnRight(random: Random): PaperJob {
  const loom = new Loom(random);
  const freeLoads: FreeLoad[] = [loom.supply()];
  if (random.chance(0.6)) freeLoads.push(loom.freeLamp(random.pick([loom.main, loom.key])));
  const modules = Array.from({ length: random.pick([1, 1, 2, 3]) }, () => draftModule(loom));
  const [one, other] = modules;
  if (one && other && random.chance(0.7)) dataLines(one, other);
  const pins = modules.flatMap((module, index) => plugIn(loom, module, `X${index + 1}`));
  printWords(loom, pins);
  return { job: loom.job, pins, freeLoads, keyBus: loom.key, mainBus: loom.main };
}

function draftModule(loom: Loom): ModuleDraft {
  const { random } = loom;
  const module = new ModuleDraft(loom, random.chance(0.92), random.chance(0.92));
  if (module.hasFeed) random.pick([batteryFeed, keyFeed])(module);
  else feedByContact(module);
  if (module.hasGround) ground(module);
  else groundByContact(module);
  const wanted = module.size + 2 + random.below(9);
  while (module.size < wanted) {
    const isFeed = random.chance(0.5);
    if (!isFeed) random.pick(LOAD_RECIPES)(module);
    // What would feed or ground a module that has no feed of its own would make it another module.
    else if (module.hasFeed && module.hasGround) random.pick(FEED_RECIPES)(module);
  }
  return module;
}

/** Ties each wired pin to a cavity of a new plug, and unused ones in one of the ways people do it. */
function plugIn(loom: Loom, module: ModuleDraft, plugId: string): readonly TruePin[] {
  const { random, job } = loom;
  const plug: Plug = plugFace(random, plugId, module.size + random.below(3));
  job.plugs.push(plug);
  const marks = plug.cavities.map(({ mark }) => mark);
  const pins = module.finish(marks).map(({ isWired, ...pin }): TruePin => {
    const mark = pin.pin.slice(pin.pin.indexOf(":") + 1);
    const cavity = `${plugId}:${mark}`;
    const own = plug.cavities.find((one) => one.mark === mark);
    if (own && !isWired) Object.assign(own, random.pick([{}, { empty: true }, { blocked: true }]));
    const isOpen = !own?.empty && !own?.blocked;
    if (!isWired && !isOpen && random.chance(0.5)) return { ...pin, cavity: null };
    job.links.push({ pin: pin.pin, cavity });
    return { ...pin, cavity };
  });
  for (const cavity of plug.cavities) {
    if (pins.some(({ pin }) => pin.endsWith(`:${cavity.mark}`))) continue;
    Object.assign(cavity, random.chance(0.5) ? { empty: true } : { blocked: true });
  }
  return pins;
}

/** A right word beside most pins. */
function printWords({ random, job }: Loom, pins: readonly TruePin[]): void {
  for (const part of job.diagram.parts) {
    if (part.kind !== "module") continue;
    for (const own of part.pins) {
      const truth = pins.find(({ pin }) => pin === `${part.id}:${own.id}`);
      if (!truth || random.chance(0.15)) continue;
      own.printed = random.pick(WORDS.filter((word) => mayStand(word, truth))).text;
    }
  }
}
