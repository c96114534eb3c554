import type { CavityState } from "./cavity-facts.ts";
import { besidesChief, evidenceInWords, type MeterPicture } from "./evidence.ts";
import type { SheetRow } from "./model.ts";

/** What was measured, how, and what else; never silent about a reading that there is. */
export function evidenceColumns(
  state: CavityState,
  picture: MeterPicture,
  isSameWay: boolean,
): Pick<SheetRow, "evidence" | "evidenceSetup" | "evidenceBesides" | "proved" | "faulty"> {
  const { settledBy, chief } = picture;
  if (!chief) {
    const isNeeded = state === "wired" || state === "untied";
    return {
      evidence: isNeeded ? "not measured" : "",
      evidenceSetup: [],
      evidenceBesides: [],
      proved: false,
      faulty: false,
    };
  }
  const comparison = chief.verdict === "not-comparable" ? "" : comparisonOf(picture);
  const should = isSameWay || chief.should === "" ? "" : `should read ${chief.should}`;
  const { named, more } = besidesChief(picture);
  return {
    evidence: [chief.value, comparison, chief.day].filter((word) => word !== "").join(", "),
    evidenceSetup: [chief.between, ...chief.conditions, ...chief.plugged, should].filter(
      (word) => word !== "",
    ),
    evidenceBesides: [
      ...named.map((one) => `! ${evidenceInWords(one)}`),
      ...(more === "" ? [] : [`and ${more}`]),
    ],
    proved: settledBy !== null,
    faulty: chief.verdict === "outside",
  };
}

/** That a reading confirms has a mark and a word of its own. */
const comparisonOf = ({ settledBy, chief, chiefWords }: MeterPicture): string =>
  settledBy && chief ? chief.verdictWords : chiefWords;
