import type { Rule } from "../rule.ts";
import { cavityEmpty } from "./cavity-empty.ts";
import { cavityWithoutPin } from "./cavity-without-pin.ts";
import { colourDiffers } from "./colour-differs.ts";
import { deadShort } from "./dead-short.ts";
import { duplicateLink } from "./duplicate-link.ts";
import { duplicateMark } from "./duplicate-mark.ts";
import { looseEnd } from "./loose-end.ts";
import { noReturn } from "./no-return.ts";
import { noSupply } from "./no-supply.ts";
import { numberDiffers } from "./number-differs.ts";
import { pinWithoutCavity } from "./pin-without-cavity.ts";
import { printedRoleContradicted } from "./printed-role-contradicted.ts";
import { printedRolesRearranged } from "./printed-roles-rearranged.ts";
import { readingContradictsPrinted } from "./reading-contradicts-printed.ts";
import { readingNotValid } from "./reading-not-valid.ts";
import { readingUnexpected } from "./reading-unexpected.ts";
import { readingsDisagree } from "./readings-disagree.ts";
import { roleUndecided } from "./role-undecided.ts";

/** Every rule, by severity and then by id: the order in which findings are told. */
export const RULES: readonly Rule[] = [
  // Contradictions
  deadShort,
  duplicateLink,
  duplicateMark,
  printedRoleContradicted,
  readingContradictsPrinted,
  // Warnings
  cavityEmpty,
  cavityWithoutPin,
  colourDiffers,
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
  roleUndecided,
];
