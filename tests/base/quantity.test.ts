import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  echoQuantity,
  formatBand,
  formatQuantity,
  type Measure,
  parseQuantity,
} from "../../src/base/index.ts";

const read = (text: string, measure: Measure) => {
  const result = parseQuantity(text, measure);
  return result.ok ? result.value : result.issues[0]?.code;
};

describe("what a mechanic types", () => {
  test.each<[string, Measure, number | "OL"]>([
    ["12,4", "volts", 12.4],
    ["12.4", "volts", 12.4],
    ["12.4v", "volts", 12.4],
    ["12.4 V DC", "volts", 12.4],
    ["12 volts", "volts", 12],
    ["12V4", "volts", 12.4],
    ["-0,5", "volts", -0.5],
    ["−0.5", "volts", -0.5],
    ["– 0.5", "volts", -0.5],
    ["+24", "volts", 24],
    [".5", "volts", 0.5],
    ["12.", "volts", 12],
    ["12 mV", "volts", 0.012],
    ["12MV", "volts", 0.012],
    ["0.18", "drop", 0.18],
    ["OL", "ohms", "OL"],
    ["0L", "ohms", "OL"],
    ["o.l.", "ohms", "OL"],
    ["0.L MΩ", "ohms", "OL"],
    ["∞", "ohms", "OL"],
    ["0.3 ohm", "ohms", 0.3],
    ["0.3\u2126", "ohms", 0.3],
    ["1k2", "ohms", 1200],
    ["4k7", "ohms", 4700],
    ["4K7", "ohms", 4700],
    ["4R7", "ohms", 4.7],
    ["2M2", "ohms", 2.2e6],
    ["1.2k", "ohms", 1200],
    ["1,2 kohm", "ohms", 1200],
    ["2.2 MΩ", "ohms", 2.2e6],
    ["1 meg", "ohms", 1e6],
    ["50 mΩ", "ohms", 0.05],
    ["1 200", "ohms", 1200],
    ["3.2 amps", "amps", 3.2],
    ["250 mA", "amps", 0.25],
    ["30 µA", "amps", 3e-5],
    ["-0", "volts", 0],
    ["-0.0", "ohms", 0],
  ])("%s in %s is %s", (text, measure, value) => {
    expect(read(text, measure)).toBe(value);
  });

  test.each<[string, Measure, string]>([
    ["", "volts", "quantity-empty"],
    ["  ", "ohms", "quantity-empty"],
    ["OL", "volts", "quantity-ol-not-ohms"],
    ["OL", "amps", "quantity-ol-not-ohms"],
    ["12 V", "ohms", "quantity-other-unit"],
    ["12 ohm", "volts", "quantity-other-unit"],
    ["3A5", "volts", "quantity-other-unit"],
    ["twelve", "volts", "quantity-unreadable"],
    ["1.2.3", "volts", "quantity-unreadable"],
    ["1,2,3", "volts", "quantity-unreadable"],
    ["1.234,5", "volts", "quantity-two-marks"],
    ["1.234,5", "ohms", "quantity-two-marks"],
    ["1,200.5", "ohms", "quantity-two-marks"],
    ["-5", "ohms", "quantity-negative-ohms"],
    ["−0,3 Ω", "ohms", "quantity-negative-ohms"],
    ["-4k7", "ohms", "quantity-negative-ohms"],
    ["12 meg", "volts", "quantity-unreadable"],
    ["--3", "volts", "quantity-unreadable"],
    ["1k2.5", "ohms", "quantity-unreadable"],
    ["1.5k2", "ohms", "quantity-unreadable"],
    ["1 2", "ohms", "quantity-unreadable"],
    ["12 bananas", "volts", "quantity-unreadable"],
  ])("%j in %s is refused as %s", (text, measure, code) => {
    expect(read(text, measure)).toBe(code);
  });
});

describe("what is shown", () => {
  test.each<[number | "OL", Measure, string]>([
    [12.4, "volts", "12.40 V"],
    [0, "volts", "0.00 V"],
    [-0.5, "drop", "−0.50 V"],
    [24.137, "volts", "24.14 V"],
    [0.012, "volts", "12 mV"],
    [0.3, "ohms", "0.30 Ω"],
    [12, "ohms", "12.0 Ω"],
    [120, "ohms", "120 Ω"],
    [1200, "ohms", "1.20 kΩ"],
    [4700, "ohms", "4.70 kΩ"],
    [2.2e6, "ohms", "2.20 MΩ"],
    [999.96, "ohms", "1.00 kΩ"],
    ["OL", "ohms", "OL"],
    [0.25, "amps", "0.25 A"],
    [-1e-9, "volts", "0.00 V"],
  ])("%s in %s reads %s", (value, measure, text) => {
    expect(formatQuantity(value, measure)).toBe(text);
  });

  test("the echo keeps every digit typed", () => {
    expect(echoQuantity(12.3456, "volts")).toBe("12.3456 V");
    expect(echoQuantity(12.4, "volts")).toBe("12.40 V");
  });

  test("a band shares one unit", () => {
    expect(formatBand(11.52, 12.6, "volts")).toBe("11.5 to 12.6 V");
    expect(formatBand(0, 0.5, "ohms")).toBe("0.0 to 0.5 Ω");
    expect(formatBand(900, 1300, "ohms")).toBe("0.9 to 1.3 kΩ");
    expect(formatBand(-0.05, 0.05, "volts")).toBe("−0.05 to 0.05 V");
    expect(formatBand(0, 0, "volts")).toBe("0.0 V");
  });

  const measures = fc.constantFrom<Measure>("volts", "ohms", "amps", "drop");
  const sizes = fc.double({ min: -4, max: 7, noNaN: true }).map((power) => 10 ** power);

  test("what is shown reads back as the same value, to four digits", () => {
    fc.assert(
      fc.property(measures, sizes, fc.boolean(), (measure, size, negative) => {
        const value = negative && measure !== "ohms" ? -size : size;
        const back = read(formatQuantity(value, measure), measure);
        expect(Math.abs(Number(back) - value)).toBeLessThanOrEqual(Math.abs(value) * 6e-4);
      }),
    );
  });

  test("the echo reads back as exactly what was typed", () => {
    fc.assert(
      fc.property(measures, fc.integer({ min: -999_999, max: 999_999 }), (measure, thousandths) => {
        const value = (measure === "ohms" ? Math.abs(thousandths) : thousandths) / 1000;
        expect(read(echoQuantity(value, measure), measure)).toBe(value + 0);
      }),
    );
  });
});
