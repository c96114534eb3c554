import { type Meaning, means } from "./meaning.ts";

/** What stands beside module pins on diagrams in any language (common practice, no source); keys as in english.ts. */
export const INTERNATIONAL: Readonly<Record<string, readonly Meaning[]>> = {
  // Feeds
  ACC: means("switched-supply"),
  BAT: means("supply"),
  BATT: means("supply"),
  VBAT: means("supply"),
  VBATT: means("supply"),
  VCC: means("supply", "sensor-supply"),
  VDD: means("supply", "sensor-supply"),
  UB: means("supply"),
  "B+": means("supply"),
  "BAT+": means("supply"),
  "BATT+": means("supply"),
  "VBAT+": means("supply"),
  "UB+": means("supply"),
  "+": means("supply"),
  "V+": means("supply", "sensor-supply"),
  "<V>": means("supply"),

  // Grounds
  GND: means("ground"),
  AGND: means("sensor-ground", "ground"),
  "-": means("ground"),
  "B-": means("ground"),
  "BAT-": means("ground"),
  "BATT-": means("ground"),
  "V-": means("ground"),
  "0V": means("ground"),
  VSS: means("ground"),

  // Sensors and lamps
  "<REF>": means("sensor-supply"),
  VREF: means("sensor-supply"),
  LED: means("output"),

  // Lines between modules
  CAN: means("signal"),
  CANH: means("signal"),
  CANL: means("signal"),
  "CAN H": means("signal"),
  "CAN L": means("signal"),
  "CAN HI": means("signal"),
  "CAN LO": means("signal"),
  "CAN HIGH": means("signal"),
  "CAN LOW": means("signal"),
  "CAN+": means("signal"),
  "CAN-": means("signal"),
  "CAN GND": means("ground"),
  "CAN SHIELD": means("ground"),
  "CAN SHLD": means("ground"),
  LIN: means("signal"),
  TX: means("signal"),
  TXD: means("signal"),
  RX: means("signal"),
  RXD: means("signal"),
  "K LINE": means("signal"),

  // Nothing
  NC: means("unused"),
};
