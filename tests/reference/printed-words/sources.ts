/**
 * What the things that stand beside module pins are called in each language, with where it is
 * published. Sources are public texts that have nothing to do with this program; the words are
 * written off by hand. `null`: common practice, no source found.
 */
export const SOURCES = {
  din: "DIN 72552 terminal meanings, as listed by the BS-Wiki (German), Wikipedia (English) and a Polish electronics forum",
  tracker:
    "translations of a vehicle tracker's screens (traccar/traccar-web, Apache 2.0): ignition, battery, input, output, foot brake, alarm",
  home: "translated names of household equipment (openhab/openhab-core, semantic tags, EPL 2.0)",
  fault: "texts for SAE J1939 failure modes 3 and 4, short to plus and to ground, in public code",
  jis: "JIS D 0103:1997, headings of the nomenclature of automobile electric parts",
  glossary: "public glossaries of car and electronics terms, and Reta Vortaro for relay",
} as const;

export type Source = keyof typeof SOURCES | null;
export type Word = readonly [word: string, source: Source];

export type Tongue =
  | "English"
  | "German"
  | "French"
  | "Spanish"
  | "Italian"
  | "Portuguese"
  | "Dutch"
  | "Swedish"
  | "Polish"
  | "Turkish"
  | "Japanese";

/** By what they mean, then by language. */
export type Published = Readonly<Record<string, Readonly<Record<Tongue, readonly Word[]>>>>;
