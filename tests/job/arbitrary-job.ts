import fc from "fast-check";
import {
  cavityRef,
  type Job,
  type Part,
  pinIdsOf,
  pinRef,
  type Sheet,
} from "../../src/job/index.ts";

/** Any text, script and quotes and odd characters included, but no key of the machinery. */
const words = fc.oneof(
  fc.string({ maxLength: 12 }),
  fc.string({ maxLength: 8, unit: "binary" }),
  fc.constantFrom("<script>alert(1)</script>", "=1+1", "../x", "\u0000", "Ω µ é → ±", "\ud800"),
);
const number = fc
  .double({ noNaN: true, noDefaultInfinity: true })
  .map((n) => (Object.is(n, -0) ? 0 : n));
const positive = fc.double({ min: 0.001, max: 1e6, noNaN: true });
const point = fc.tuple(number, number);
const isPlain = (key: string) => !(key in Object.prototype) && key !== "prototype";

/** Fields that no version knows, on any object. */
const unknown = fc.dictionary(
  fc
    .string({ minLength: 1, maxLength: 6 })
    .filter(isPlain)
    .map((key) => `x ${key}`),
  fc
    .jsonValue({ maxDepth: 3 })
    .map((value) => JSON.stringify(value))
    .filter((text) => !/__proto__|constructor|prototype/.test(text))
    .map((text) => JSON.parse(text)),
  { maxKeys: 2 },
);

const withUnknown = <T extends object>(known: fc.Arbitrary<T>): fc.Arbitrary<T> =>
  fc.tuple(known, unknown).map(([fields, extra]) => ({ ...extra, ...fields }));

const colour = withUnknown(
  fc.record(
    { base: fc.constantFrom("RD", "BK", "GNYE"), tracer: fc.constantFrom("WH", "BU") },
    { requiredKeys: ["base"] },
  ),
);

const kindFields = fc.oneof(
  fc.constant({ kind: "battery" as const }),
  fc.constant({ kind: "ground" as const, place: "cab" }),
  fc.record({ kind: fc.constant("fuse" as const), amps: positive }),
  fc.record({ kind: fc.constant("relay" as const), poles: fc.integer({ min: 1, max: 8 }) }),
  fc.constant({ kind: "solenoid" as const, ohmsPull: 0.5, ohmsHold: 12 }),
  fc.constant({
    kind: "switch" as const,
    positions: ["off", "on"],
    springReturn: ["on"],
    contacts: [{ between: ["1", "2"] as [string, string], closedIn: ["on"] }],
    control: "key" as const,
  }),
  fc
    .uniqueArray(
      words.filter((word) => word !== ""),
      { minLength: 1, maxLength: 5 },
    )
    .chain((ids) =>
      fc.record({
        kind: fc.constant("module" as const),
        pins: fc.tuple(
          ...ids.map((id) => withUnknown(fc.record({ id: fc.constant(id), printed: words }))),
        ),
      }),
    ),
  fc.constant({ kind: "offpage" as const, label: "To page 2" }),
);

const part = (id: string): fc.Arbitrary<Part> =>
  fc
    .tuple(kindFields, point, number, unknown, fc.option(words, { nil: undefined }))
    .map(([fields, at, turn, extra, label]) => {
      const whole = { ...extra, id, sheet: "sheet1", at, turn, ...fields };
      return (label === undefined ? whole : { ...whole, label }) as Part;
    });

const ids = (prefix: string, max: number) =>
  fc.integer({ min: 1, max }).map((n) => Array.from({ length: n }, (_, i) => `${prefix}${i + 1}`));

const parts = ids("P", 6).chain((list) => fc.tuple(...list.map(part)));

const plugs = ids("X", 2).chain((list) =>
  fc.tuple(
    ...list.map((id) =>
      withUnknown(
        fc.record({
          id: fc.constant(id),
          side: fc.constantFrom("mating" as const, "wire" as const),
          cavities: fc.uniqueArray(
            withUnknown(fc.record({ mark: words.filter((word) => word !== ""), at: point })),
            { minLength: 1, maxLength: 5, selector: (cavity) => cavity.mark },
          ),
        }),
      ),
    ),
  ),
);

/** Jobs that may be read: of many kinds, full of unknown fields and hard words. */
export const arbitraryJob: fc.Arbitrary<Job> = fc
  .tuple(parts, plugs)
  .chain(([partList, plugList]) => {
    const pins = partList.flatMap((one) => pinIdsOf(one).map((pin) => pinRef(one.id, pin)));
    const cavities = plugList.flatMap((one) =>
      one.cavities.map((cavity) => cavityRef(one.id, cavity.mark)),
    );
    const pin = fc.constantFrom(...pins);
    const cavity = fc.constantFrom(...cavities);
    const reading = (id: string) =>
      withUnknown(
        fc.record({
          id: fc.constant(id),
          quantity: fc.constantFrom("volts" as const, "ohms" as const),
          red: fc.oneof(pin, cavity),
          black: fc.constantFrom("battery-", "chassis"),
          value: fc.oneof(number, fc.constant("OL" as const)),
          when: withUnknown(fc.record({ unplugged: fc.constant<string[]>(["P1"]) })),
        }),
      );
    return withUnknown(
      fc.record({
        format: fc.constant("pintruth-job" as const),
        version: fc.constant(1 as const),
        title: words,
        systemVoltage: fc.constantFrom(12, 24, 48),
        diagram: withUnknown(
          fc.record({
            sheets: fc.constant<Sheet[]>([{ id: "sheet1" }]),
            parts: fc.constant([...partList]),
            wires: ids("W", 6).chain((list) =>
              fc.tuple(
                ...list.map((id) =>
                  withUnknown(
                    fc.record(
                      {
                        id: fc.constant(id),
                        from: pin,
                        to: pin,
                        number: words,
                        colour,
                        path: fc.array(point, { maxLength: 3 }),
                      },
                      { requiredKeys: ["id", "from", "to"] },
                    ),
                  ),
                ),
              ),
            ),
          }),
        ),
        plugs: fc.constant([...plugList]),
        links: fc.array(withUnknown(fc.record({ pin, cavity })), { maxLength: 4 }),
        machines: fc.tuple(
          withUnknown(
            fc.record({
              id: fc.constant("M1"),
              name: words,
              wires: fc.array(withUnknown(fc.record({ cavity, colour })), { maxLength: 3 }),
              readings: ids("R", 3).chain((list) => fc.tuple(...list.map(reading))),
              trials: fc.constant([]),
            }),
          ),
        ),
      }),
    );
  });
