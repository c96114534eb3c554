import { flat } from "../../base/index.ts";
import type { CavityRef } from "../../job/index.ts";
import type { Role } from "../../roles/index.ts";
import type { Views } from "../rule.ts";
import { FuseViews } from "./fuse-views.ts";
import { JudgedReadings } from "./judged-readings.ts";
import { Last } from "./keep.ts";
import { LoadViews } from "./load-views.ts";
import { MachineWireViews } from "./machine-wire-views.ts";
import { MislaidViews } from "./mislaid-views.ts";
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

export type { Now } from "./now.ts";

/** Everything that rules may look at, by what they are about. */
export type AllViews = { readonly [A in keyof Views]: readonly Views[A][] };

export interface Overview {
  readonly views: AllViews;
  /** One per module pin, in the order of the diagram. */
  readonly roles: readonly Role[];
}

/** Looks over one machine of a job time and again; whatever is as it was stays the same object. */
export class Lookover {
  private readonly shorts = new ShortViews();
  private readonly loads = new LoadViews();
  private readonly parts = new PartViews();
  private readonly fuses = new FuseViews();
  private readonly unfused = new UnfusedViews();
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

  over(now: Now): Overview {
    const { links } = now.job;
    const paper = this.paper.of(now);
    const judged = this.judged.of(now);
    const isMeasured = judged.length > 0;
    const cavities = this.cavities.of([isMeasured && paper], () =>
      isMeasured ? cavitiesOn(paper) : new Set(),
    );
    const modules = this.modules.of(paper, this.judged.evidenceAt(now, judged, cavities));
    const roles = this.roles.of([modules], () => flat(modules.map((module) => module.roles)));
    const readings = this.readings.of(judged, modules, links);
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
        "page-line": this.pageLines.of(now),
        module: modules,
        misprinted: this.misprinted.of(modules),
        plug: plugs,
        links: this.links.of([links], () => [{ links }]),
        "machine-wire": wires,
        mislaid: this.mislaid.of(now, { judged, ground, plugs, wires }),
        reading: readings,
        readings: this.allReadings.of([readings], () => [{ readings }]),
      },
    };
  }
}

function cavitiesOn(paper: readonly PaperModule[]): ReadonlySet<CavityRef> {
  const found = new Set<CavityRef>();
  for (const { paper: roles } of paper)
    for (const { cavity } of roles) if (cavity !== null) found.add(cavity);
  return found;
}
