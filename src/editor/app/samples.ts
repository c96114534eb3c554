/** A job of our own that comes with the program. */
export interface Sample {
  readonly file: string;
  readonly title: string;
  readonly about: string;
}

/** The first one is the demo that a first visit opens with. */
export const SAMPLES: readonly [Sample, ...Sample[]] = [
  {
    file: "sweeper.pintruth",
    title: "Road sweeper: the water pump will not stay on",
    about: "A scan, an eight-way plug, words shifted by one, a bad ground.",
  },
  {
    file: "trailer-iso-12098.pintruth",
    title: "Trailer connector, 24 V, fifteen pins",
    about: "ISO 12098 with its published functions and colours.",
  },
];
