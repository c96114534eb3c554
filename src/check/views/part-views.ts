import { CELL, type Member } from "../../circuit/index.ts";
import type { PinRef } from "../../job/index.ts";
import type { PartView } from "../rule.ts";
import { keepInStep, Last } from "./keep.ts";
import type { Now } from "./now.ts";

interface Kept {
  readonly member: Member;
  readonly view: PartView;
  readonly revision: number;
}

/** Looks at the parts and at the wires that come to each of their pins. */
export class PartViews {
  private readonly last = new Last<readonly PartView[]>();
  /** In the order of the drawing. */
  private kept: readonly Kept[] = [];

  of({ job: { systemVoltage }, circuit: { parts, wires }, network }: Now): readonly PartView[] {
    const { revision } = network;
    const isBegun = wires.length > 0;
    return this.last.of([parts, revision, isBegun, systemVoltage], (before) => {
      const were = this.kept;
      const holds = ({ view, revision: since }: Kept, { part, firstPin, pins }: Member) => {
        if (view.part !== part || view.systemVoltage !== systemVoltage) return false;
        if (view.isBegun !== isBegun) return false;
        if (since === revision) return true;
        for (let pin = firstPin; pin < firstPin + pins.length; pin++)
          if (!network.isSameSince(since, pin, CELL.hops)) return false;
        return true;
      };
      this.kept = keepInStep(were, network.roster.members, memberOf, (member, known) => {
        if (known && holds(known, member)) return known;
        const { part, firstPin, pins } = member;
        const wiresAt = new Map<PinRef, number>(
          pins.map((pin, place) => [pin, network.wiresAt(firstPin + place).length]),
        );
        return { member, view: { part, wires: wiresAt, isBegun, systemVoltage }, revision };
      });
      return before && this.kept === were ? before : this.kept.map(({ view }) => view);
    });
  }
}

const memberOf = ({ member }: Kept) => member;
