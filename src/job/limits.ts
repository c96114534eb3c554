/**
 * How large a job file may be. They are far above any honest job and exist so that a hostile or
 * broken file is refused before it is unpacked or parsed.
 */
export const LIMITS = {
  /** Bytes of `job.json`. */
  jobBytes: 64 * 1024 * 1024,
  /** Brackets inside brackets. */
  nesting: 64,
  /** Commas and opening brackets in `job.json`, which is about the number of its values. */
  values: 4_000_000,
  /** Faults reported of one file; the rest would say no more. */
  issues: 50,
  /** Files in a `.pintruth` archive. */
  entries: 2_000,
  /** Bytes of everything in an archive, unpacked. */
  unpackedBytes: 512 * 1024 * 1024,
  /** Unpacked bytes for each packed one, of an entry above `freeBytes`. A deflate bomb has 1,000. */
  ratio: 200,
  freeBytes: 1024 * 1024,
  /** Width times height of one picture: an A0 sheet at 300 dpi has 140, an A1 sheet 70 megapixels. */
  pixels: 100_000_000,
} as const;
