import type { Rule } from "../rule.ts";
import { adoptedRoleContradicted } from "./adopted-role-contradicted.ts";
import { cavitiesSwapped } from "./cavities-swapped.ts";
import { cavityEmpty } from "./cavity-empty.ts";
import { cavityWithoutPin } from "./cavity-without-pin.ts";
import { colourChanges } from "./colour-changes.ts";
import { colourDiffers } from "./colour-differs.ts";
import { deadShort } from "./dead-short.ts";
import { duplicateLink } from "./duplicate-link.ts";
import { duplicateMark } from "./duplicate-mark.ts";
import { faceMirrored } from "./face-mirrored.ts";
import { fuseBelowLoad } from "./fuse-below-load.ts";
import { fuseExceedsWire } from "./fuse-exceeds-wire.ts";
import { looseEnd } from "./loose-end.ts";
import { mislaidUndecided } from "./mislaid-undecided.ts";
import { noReturn } from "./no-return.ts";
import { noSupply } from "./no-supply.ts";
import { nothingTraced } from "./nothing-traced.ts";
import { numberDiffers } from "./number-differs.ts";
import { pinWithoutCavity } from "./pin-without-cavity.ts";
import { printedRoleContradicted } from "./printed-role-contradicted.ts";
import { printedRolesRearranged } from "./printed-roles-rearranged.ts";
import { readingContradictsCircuit } from "./reading-contradicts-circuit.ts";
import { readingContradictsPrinted } from "./reading-contradicts-printed.ts";
import { readingNotValid } from "./reading-not-valid.ts";
import { readingUnexpected } from "./reading-unexpected.ts";
import { readingsDisagree } from "./readings-disagree.ts";
import { roleUndecided } from "./role-undecided.ts";
import { rowOffByOne } from "./row-off-by-one.ts";
import { unfusedSupply } from "./unfused-supply.ts";

/** Every rule, by severity and then by id: the order in which findings are told. */
export const RULES: readonly Rule[] = [
  // Contradictions
  adoptedRoleContradicted,
  cavitiesSwapped,
  deadShort,
  duplicateLink,
  duplicateMark,
  faceMirrored,
  printedRoleContradicted,
  readingContradictsCircuit,
  readingContradictsPrinted,
  rowOffByOne,
  // Warnings
  cavityEmpty,
  cavityWithoutPin,
  colourDiffers,
  fuseBelowLoad,
  fuseExceedsWire,
  looseEnd,
  noReturn,
  noSupply,
  numberDiffers,
  pinWithoutCavity,
  printedRolesRearranged,
  readingNotValid,
  readingUnexpected,
  readingsDisagree,
  // Notes
  mislaidUndecided,
  colourChanges,
  nothingTraced,
  roleUndecided,
  unfusedSupply,
];
