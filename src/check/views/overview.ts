import { flat } from "../../base/index.ts";
import type { CavityRef, Id, Reading } from "../../job/index.ts";
import type { Role } from "../../roles/index.ts";
import type { Views } from "../rule.ts";
import { FuseViews } from "./fuse-views.ts";
import { JudgedReadings, type JudgedSoFar, stateByState, stateOf } from "./judged-readings.ts";
import { Last } from "./keep.ts";
import { LoadViews } from "./load-views.ts";
import { MachineWireViews } from "./machine-wire-views.ts";
import { type MislaidSoFar, MislaidViews, type Seen } from "./mislaid-views.ts";
import { MisprintedViews } from "./misprinted-views.ts";
import { ModuleViews } from "./module-views.ts";
import type { Now } from "./now.ts";
import { PageLineViews } from "./page-line-views.ts";
import { type PaperModule, PaperModules } from "./paper-modules.ts";
import { PartViews } from "./part-views.ts";
import { PlugViews } from "./plug-views.ts";
import { ReadingViews } from "./reading-views.ts";
import { ShortViews } from "./short-views.ts";
import { UnfusedViews } from "./unfused-views.ts";
import { UntracedViews } from "./untraced-views.ts";

export type { Now } from "./now.ts";

/** Everything that rules may look at, by what they are about. */
export type AllViews = { readonly [A in keyof Views]: readonly Views[A][] };

export interface Overview {
  readonly views: AllViews;
  /** One per module pin, in the order of the diagram. */
  readonly roles: readonly Role[];
}

/** An overview in which something stands as it was last. */
export interface OverviewSoFar extends Overview {
  /** Ids of the readings and plugs that are to be looked at again. */
  readonly again: readonly Id[];
}

/** Looks over one machine of a job time and again; whatever is as it was stays the same object. */
export class Lookover {
  private readonly shorts = new ShortViews();
  private readonly loads = new LoadViews();
  private readonly parts = new PartViews();
  private readonly fuses = new FuseViews();
  private readonly unfused = new UnfusedViews();
  private readonly untraced = new UntracedViews();
  private readonly pageLines = new PageLineViews();
  private readonly paper = new PaperModules();
  private readonly modules = new ModuleViews();
  private readonly misprinted = new MisprintedViews();
  private readonly plugs = new PlugViews();
  private readonly links = new Last<AllViews["links"]>();
  private readonly wires = new MachineWireViews();
  private readonly judged = new JudgedReadings();
  private readonly mislaid = new MislaidViews();
  private readonly readings = new ReadingViews();
  private readonly allReadings = new Last<AllViews["readings"]>();
  private readonly roles = new Last<readonly Role[]>();
  private readonly cavities = new Last<ReadonlySet<CavityRef>>();
  /** To be looked at again, in this order. */
  private waiting: readonly Reading[] = [];
  private plugsWaiting: readonly Id[] = [];

  /** All of it, worked out. */
  over(now: Now): Overview {
    return this.with(now, { judged: this.judged.of(now), again: NONE }, (seen) => ({
      views: this.mislaid.of(now, seen),
      again: [],
    }));
  }

  /** All but what follows from readings: that stands as it was last, and is to be looked at again. */
  soFar(now: Now): OverviewSoFar {
    const judged = this.judged.soFar(now);
    this.waiting = stateByState(judged.again);
    this.plugsWaiting = [];
    const overview = this.with(now, judged, (seen) => {
      const mislaid = this.mislaid.soFar(now, seen, judged.again.size === 0);
      this.plugsWaiting = mislaid.again;
      return mislaid;
    });
    return {
      ...overview,
      again: [...this.waiting.map(({ id }) => id), ...this.plugsWaiting],
    };
  }

  /**
   * Works out one thing of those that the last overview left to be looked at again; true where that
   * makes news: all readings of a state are judged, or a plug is done with.
   */
  step(now: Now): boolean {
    const [reading, next] = this.waiting;
    if (reading !== undefined) {
      if (!this.judged.step(now, reading)) return false;
      this.waiting = this.waiting.slice(1);
      return next === undefined || stateOf(next) !== stateOf(reading);
    }
    const [plug] = this.plugsWaiting;
    if (plug === undefined) return true;
    this.plugsWaiting = this.plugsWaiting.slice(1);
    this.mislaid.step(
      now,
      {
        judged: this.judged.of(now),
        ground: this.judged.standing,
        plugs: this.plugs.of(now),
        wires: this.wires.of(now),
      },
      plug,
    );
    return true;
  }

  private with(now: Now, readings: JudgedSoFar, mislaidOf: (seen: Seen) => MislaidSoFar): Overview {
    const { links } = now.job;
    const { judged } = readings;
    const paper = this.paper.of(now);
    const isMeasured = judged.length > 0;
    const cavities = this.cavities.of([isMeasured && paper], () =>
      isMeasured ? cavitiesOn(paper) : new Set(),
    );
    const evidence = this.judged.evidenceAt(readings, now.machine.readings, cavities);
    const modules = this.modules.of(paper, evidence);
    const roles = this.roles.of([modules], () => flat(modules.map((module) => module.roles)));
    const reading = this.readings.of(readings, modules, links);
    const plugs = this.plugs.of(now);
    const wires = this.wires.of(now);
    const { standing: ground } = this.judged;
    return {
      roles,
      views: {
        short: this.shorts.of(now),
        load: this.loads.of(now),
        part: this.parts.of(now),
        fuse: this.fuses.of(now),
        unfused: this.unfused.of(now),
        untraced: this.untraced.of(now),
        "page-line": this.pageLines.of(now),
        module: modules,
        misprinted: this.misprinted.of(modules),
        plug: plugs,
        links: this.links.of([links], () => [{ links }]),
        "machine-wire": wires,
        mislaid: mislaidOf({ judged, ground, plugs, wires }).views,
        reading,
        readings: this.allReadings.of([reading], () => [{ readings: reading }]),
      },
    };
  }
}

const NONE: ReadonlySet<Reading> = new Set();

function cavitiesOn(paper: readonly PaperModule[]): ReadonlySet<CavityRef> {
  const found = new Set<CavityRef>();
  for (const { paper: roles } of paper)
    for (const { cavity } of roles) if (cavity !== null) found.add(cavity);
  return found;
}
