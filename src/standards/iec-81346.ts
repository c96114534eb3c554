/** Class letters of IEC 81346-2:2009 that ids of parts, wires and plugs begin with. */
export const IEC_81346 = {
  A: "two or more purposes",
  B: "input variable to signal (sensor)",
  C: "storing",
  E: "radiant or thermal energy (lighting lamp, heater)",
  F: "protection (fuse)",
  G: "starting a flow of energy (generator, battery)",
  H: "producing material",
  K: "processing signals (relay, timer)",
  M: "mechanical drive (motor)",
  P: "presenting information (signal lamp, meter, buzzer)",
  Q: "switching or varying energy flow (contactor, breaker)",
  R: "restricting or stabilising (resistor, diode)",
  S: "manual operation to signal (switch)",
  T: "converting energy or signal",
  U: "holding in position",
  V: "processing material",
  W: "guiding from place to place (wire, cable, busbar)",
  X: "connecting objects (terminal, plug, socket)",
} as const;

export type ClassLetter = keyof typeof IEC_81346;
