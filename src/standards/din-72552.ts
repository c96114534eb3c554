/**
 * Terminal designations of DIN 72552: what the number or letter moulded beside a terminal stands
 * for. 85 to 87 are as relays carry them in practice; the standard's own text for 87 ("relay
 * contact input") belongs to an older form, where 30/51 is the output.
 */
export const DIN_72552 = {
  "1": "ignition coil low voltage",
  "4": "ignition coil high voltage",
  "15": "switched + after ignition switch",
  "15a": "output of ballast resistor",
  "17": "start (preheat switch)",
  "19": "preheat",
  "30": "direct from battery +",
  "30a": "from second battery / 12-24 V changeover",
  "31": "ground, direct to battery -",
  "31a": "return to second battery - (12/24 V relay)",
  "31b": "switched ground, via switch or relay",
  "31c": "return to first battery - (12/24 V relay)",
  "32": "motor return",
  "33": "motor main connection",
  "45": "separate starter relay output / main current",
  "49": "flasher unit input",
  "49a": "flasher output / indicator switch input",
  "49b": "flasher output second circuit",
  "49c": "flasher output third circuit",
  "50": "starter control",
  "51": "DC at rectifier",
  "53": "wiper motor +",
  "53a": "wiper self-park",
  "54": "stop lamps",
  "55": "fog lamps",
  "56": "headlamps (to dip switch)",
  "56a": "high beam and tell-tale",
  "56b": "low beam",
  "56d": "headlamp flash",
  "57": "parking lamp",
  "58": "side, tail, plate, instrument lamps",
  "58L": "left side/tail lamps",
  "58R": "right side/tail lamps",
  "59": "alternator AC output",
  "61": "charge tell-tale",
  "85": "relay coil (DIN: ground side)",
  "86": "relay coil (DIN: + side)",
  "87": "relay normally-open output",
  "87a": "relay normally-closed output",
  "87b": "second relay output",
  L: "left indicator lamps",
  R: "right indicator lamps",
  C: "first indicator tell-tale",
  C2: "second tell-tale",
  C3: "third tell-tale",
  "B+": "battery + at generator",
  "B-": "battery - at generator",
  "D+": "generator +, charge tell-tale",
  "D-": "generator -",
  DF: "generator field",
} as const;

export type TerminalCode = keyof typeof DIN_72552;

export const isTerminalCode = (text: string): text is TerminalCode =>
  Object.hasOwn(DIN_72552, text);
