/**
 * Pins of the plugs between a towing vehicle and its trailer, by their published tables: the mark
 * moulded beside the pin, what it is for, and the colour of its wire where the table gives one.
 * Where the pins lie is not in these tables.
 */
export interface PublishedPin {
  readonly mark: string;
  readonly use: string;
  /** IEC 60757 code; null where the table gives none. */
  readonly colour: string | null;
}

export interface TrailerPlug {
  readonly standard: string;
  readonly name: string;
  readonly pins: readonly PublishedPin[];
  /** Where published tables disagree. */
  readonly note?: string;
}

type Row = readonly [mark: string, use: string, colour: string | null];

const plug = (
  standard: string,
  name: string,
  rows: readonly Row[],
  note?: string,
): TrailerPlug => ({
  standard,
  name,
  ...(note === undefined ? {} : { note }),
  pins: rows.map(([mark, use, colour]) => ({ mark, use, colour })),
});

export const TRAILER_PLUGS: readonly TrailerPlug[] = [
  plug("ISO 1724", "12N, 7 pins, 12 V lamps", [
    ["1", "left turn", "YE"],
    ["2", "rear fog (or +12 V on older vehicles)", "BU"],
    ["3", "ground", "WH"],
    ["4", "right turn", "GN"],
    ["5", "right tail, marker, plate", "BN"],
    ["6", "stop", "RD"],
    ["7", "left tail, marker, plate", "BK"],
  ]),
  plug("ISO 3732", "12S, 7 pins, 12 V supply", [
    ["1", "reversing", "YE"],
    ["2", "not listed", "BU"],
    ["3", "ground for permanent supply", "WH"],
    ["4", "+12 V permanent", "GN"],
    ["5", "not assigned", "BN"],
    ["6", "+12 V by ignition", "RD"],
    ["7", "ground for 6", "BK"],
  ]),
  plug("ISO 1185", "24N, 7 pins, 24 V lamps", [
    ["1", "ground", "WH"],
    ["2", "left tail, marker, plate", "BK"],
    ["3", "left turn", "YE"],
    ["4", "stop", "RD"],
    ["5", "right turn", "GN"],
    ["6", "right tail, marker, plate", "BN"],
    ["7", "trailer brake control or spare", "BU"],
  ]),
  plug(
    "ISO 11446",
    "13 pins, 12 V",
    [
      ["1", "left turn", "YE"],
      ["2", "rear fog", "BU"],
      ["3", "ground for 1 to 8", "WH"],
      ["4", "right turn", "GN"],
      ["5", "right tail, outline, plate", "BN"],
      ["6", "stop", "RD"],
      ["7", "left tail, outline, plate", "BK"],
      ["8", "reversing, surge brake block", "PK"],
      ["9", "+12 V permanent", "OG"],
      ["10", "+12 V by ignition", "GY"],
      ["11", "ground for 10", "BKWH"],
      ["12", "trailer there (joined to 3 on the trailer)", null],
      ["13", "ground for 9", "WHRD"],
    ],
    "Another published table has 10 as charge line of the trailer’s battery, and other colours at 8, 9, 10, 11 and 13.",
  ),
  plug("ISO 12098", "15 pins, 24 V", [
    ["1", "left turn", "YE"],
    ["2", "right turn", "GN"],
    ["3", "rear fog", "BU"],
    ["4", "ground", "WH"],
    ["5", "left tail, marker, plate", "BK"],
    ["6", "right tail, marker, plate", "BN"],
    ["7", "stop", "RD"],
    ["8", "reversing", "PK"],
    ["9", "+24 V", "OG"],
    ["10", "brake lining wear", "GY"],
    ["11", "spring brake pressure", "WHBK"],
    ["12", "axle lift", "WHBU"],
    ["13", "ground for data (14, 15)", "WHRD"],
    ["14", "data, CAN H", "WHGN"],
    ["15", "data, CAN L", "WHBN"],
  ]),
  plug("ISO 7638", "7 pins, brake electronics", [
    ["1", "B+ permanent, valves", "RD"],
    ["2", "B+ by ignition, electronics", "BK"],
    ["3", "B- by ignition, electronics ground", "YE"],
    ["4", "B- permanent, valve ground", "BN"],
    ["5", "lamp return", "WH"],
    ["6", "CAN H", "WHGN"],
    ["7", "CAN L", "WHBN"],
  ]),
  plug("STANAG 4007", "12 pins, A to N without G and I", [
    ["A", "blackout master", null],
    ["B", "left turn", null],
    ["C", "blackout marker", null],
    ["D", "ground", null],
    ["E", "tail, clearance, plate", null],
    ["F", "blackout stop", null],
    ["H", "rear fog", null],
    ["J", "right turn", null],
    ["K", "+24 V (or +12 V), permanent or by ignition", null],
    ["L", "ground", null],
    ["M", "stop", null],
    ["N", "reversing, surge brake block", null],
  ]),
];
