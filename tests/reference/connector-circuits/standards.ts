/**
 * Pin tables of trailer and brake-system connectors, written down by hand from the standards that
 * are named. The wiring behind each pin is the plainest that does what the standard says.
 */
import {
  DATA,
  FED,
  FED_BY_KEY,
  fits,
  GROUND,
  GROUND_OF_SEVERAL,
  pin,
  type Standard,
  TOLD,
  TOLD_OR_FED,
  UNUSED,
} from "./published-pin.ts";

/** The stop lamps' line lights the towing vehicle's own lamp as well. */
const STOP = fits("input/output", "output");
const STOP_OR_FED = fits("switched-supply/input/output", "output");

export const ISO_1724: Standard = {
  name: "ISO 1724 (12N)",
  volts: 12,
  pins: [
    pin("1", "Left direction indicator", "LH TURN", "YE", "turn", TOLD_OR_FED, "3"),
    pin("2", "Rear fog lamp", "FOG", "BU", "lamp", TOLD_OR_FED, "3"),
    pin("3", "Ground", "GND", "WH", "ground", GROUND),
    pin("4", "Right direction indicator", "RH TURN", "GN", "turn", TOLD_OR_FED, "3"),
    pin("5", "Right tail/marker/plate lamps", "RH TAIL", "BN", "tail", TOLD_OR_FED, "3"),
    pin("6", "Stop lamps", "STOP", "RD", "stop", STOP_OR_FED, "3"),
    pin("7", "Left tail/marker/plate lamps", "LH TAIL", "BK", "tail", TOLD_OR_FED, "3"),
  ],
};

export const ISO_3732: Standard = {
  name: "ISO 3732 (12S, current edition)",
  volts: 12,
  pins: [
    pin("1", "Reversing lamp", "REV", "YE", "reversing", TOLD, "7"),
    pin("2", "", "NC", "", "nothing", UNUSED),
    pin("3", "Ground for permanent supply", "GND", "WH", "ground", GROUND_OF_SEVERAL),
    pin("4", "Permanent +12 V", "12V", "GN", "permanent", FED, "3"),
    pin("5", "Not assigned", "NC", "", "nothing", UNUSED),
    pin("6", "Ignition-switched +12 V", "KEYED 12V", "RD", "ignition", FED_BY_KEY, "7"),
    pin("7", "Ground for pin 6", "GND", "BK", "ground", GROUND_OF_SEVERAL),
  ],
};

/** On the trailer 12 is one line with 3: what hangs on 3 is seen from 12, and the other way round. */
const BRIDGED_GROUND = fits("ground/input", "input/output");
const BRIDGED_CODE = fits("output", "input/output");

const PINS_1_TO_7 = [
  pin("1", "Left direction indicator", "LH TURN", "YE", "turn", TOLD, "3"),
  pin("2", "Rear fog lamps", "FOG", "BU", "lamp", TOLD, "3"),
  pin("3", "Ground for 1-8", "GND", "WH", "ground", BRIDGED_GROUND),
  pin("4", "Right direction indicator", "RH TURN", "GN", "turn", TOLD, "3"),
  pin("5", "Right tail/outline/plate", "RH TAIL", "BN", "tail", TOLD, "3"),
  pin("6", "Stop lamps", "STOP", "RD", "stop", STOP, "3"),
  pin("7", "Left tail/outline/plate", "LH TAIL", "BK", "tail", TOLD, "3"),
];
const PIN_12 = pin("12", "Trailer-present code", "PRESENT", "", "code", BRIDGED_CODE, "3");

export const ISO_11446: Standard = {
  name: "ISO 11446 (13-pin)",
  volts: 12,
  pins: [
    ...PINS_1_TO_7,
    pin("8", "Reversing lamps / surge-brake block", "REV", "PK", "reversing", TOLD, "3"),
    pin("9", "Permanent +12 V", "12V", "OG", "permanent", FED, "13"),
    pin("10", "+12 V via ignition", "KEYED 12V", "GY", "ignition", FED_BY_KEY, "11"),
    pin("11", "Ground for 10", "GND", "BKWH", "ground", GROUND_OF_SEVERAL),
    PIN_12,
    pin("13", "Ground for 9", "GND", "WHRD", "ground", GROUND_OF_SEVERAL),
  ],
};

/** The trailer's battery makes a feed of 10 and a ground of 11 for the towing vehicle's end too. */
export const ISO_11446_VARIANT: Standard = {
  name: "ISO 11446 (13-pin), a published variant",
  volts: 12,
  pins: [
    ...PINS_1_TO_7,
    pin("8", "Reversing lamp", "REV", "GY", "reversing", TOLD, "3"),
    pin("9", "Permanent +12 V", "12V", "BNBU", "permanent", FED, "13"),
    pin(
      "10",
      "Charge line + for trailer battery",
      "CHARGE +",
      "BNRD",
      "charge",
      fits("supply", "supply"),
      "11",
    ),
    pin("11", "Ground for 10", "GND", "WHRD", "ground", fits("ground/input", "ground")),
    PIN_12,
    pin("13", "Ground for 9", "GND", "WHBK", "ground", GROUND_OF_SEVERAL),
  ],
};

export const ISO_1185: Standard = {
  name: "ISO 1185 (24N)",
  volts: 24,
  pins: [
    pin("1", "Ground", "GND", "WH", "ground", GROUND),
    pin("2", "Left tail/marker/plate lamps", "LH TAIL", "BK", "tail", TOLD_OR_FED, "1"),
    pin("3", "Left direction indicator", "LH TURN", "YE", "turn", TOLD_OR_FED, "1"),
    pin("4", "Stop lamps", "STOP", "RD", "stop", STOP_OR_FED, "1"),
    pin("5", "Right direction indicator", "RH TURN", "GN", "turn", TOLD_OR_FED, "1"),
    pin("6", "Right tail/marker/plate lamps", "RH TAIL", "BN", "tail", TOLD_OR_FED, "1"),
    pin("7", "Trailer brake control / spare", "CTRL", "BU", "valve", TOLD_OR_FED, "1"),
  ],
};

/** The wear contact and the pressure sender come back to 4 beside the lamps. */
const SENSED = "input/sensor-supply/sensor-ground";

export const ISO_12098: Standard = {
  name: "ISO 12098 (15-pin, 24 V)",
  volts: 24,
  pins: [
    pin("1", "Left direction indicator", "LH TURN", "YE", "turn", TOLD, "4"),
    pin("2", "Right direction indicator", "RH TURN", "GN", "turn", TOLD, "4"),
    pin("3", "Rear fog lamp", "FOG", "BU", "lamp", TOLD, "4"),
    pin(
      "4",
      "Ground",
      "GND",
      "WH",
      "ground",
      fits("ground/input", "input/output/sensor-supply/sensor-ground"),
    ),
    pin("5", "Left tail/marker/plate", "LH TAIL", "BK", "tail", TOLD, "4"),
    pin("6", "Right tail/marker/plate", "RH TAIL", "BN", "tail", TOLD, "4"),
    pin("7", "Stop lamps", "STOP", "RD", "stop", STOP, "4"),
    pin("8", "Reversing lamps", "REV", "PK", "reversing", TOLD, "4"),
    pin("9", "+24 V supply", "24V", "OG", "permanent", FED, "4"),
    pin(
      "10",
      "Brake-lining wear sensor",
      "WEAR SIG",
      "GY",
      "wear",
      fits("output", "input/output/sensor-supply/sensor-ground"),
      "4",
    ),
    pin(
      "11",
      "Spring-brake pressure sensor",
      "AIR SIG",
      "WHBK",
      "pressure",
      fits("output", SENSED),
      "4",
    ),
    pin("12", "Axle lift", "AXLE LIFT", "WHBU", "valve", TOLD, "4"),
    pin("13", "Ground for data", "DATA GND", "WHRD", "ground", fits("ground/input", "signal")),
    pin("14", "Data communication (CAN H)", "CAN H", "WHGN", "data", DATA, "13"),
    pin("15", "Data communication (CAN L)", "CAN L", "WHBN", "data", DATA, "13"),
  ],
};

/**
 * The relay whose contact grounds the lamp is fed over 2 and 3 themselves: to the towing vehicle's
 * end the contact is as good as a wire from 5 to 3, on which the relay's winding hangs.
 */
const OWN_CONTACT = "input/output";

export const ISO_7638: Standard = {
  name: "ISO 7638 (ABS/EBS)",
  volts: 24,
  pins: [
    pin("1", "B+ permanent", "24V", "RD", "permanent", FED, "4"),
    pin("2", "B+ ignition", "KEYED 24V", "BK", "electronics", FED_BY_KEY, "3"),
    pin("3", "B- ignition", "GND", "YE", "ground", fits("ground/input", OWN_CONTACT)),
    pin("4", "B- permanent", "GND", "BN", "ground", GROUND_OF_SEVERAL),
    pin("5", "Lamp return", "ABS", "WH", "warning", fits("output", OWN_CONTACT), "3"),
    pin("6", "CAN High", "CAN H", "WHGN", "data", DATA),
    pin("7", "CAN Low", "CAN L", "WHBN", "data", DATA),
  ],
};

export const STANAG_4007: Standard = {
  name: "STANAG 4007 (12-pin)",
  volts: 24,
  pins: [
    pin("A", "Blackout master", "BLACKOUT MASTER", "", "lamp", TOLD, "D"),
    pin("B", "Left turn", "LH TURN", "", "turn", TOLD, "D"),
    pin("C", "Blackout marker", "BLACKOUT MARKER", "", "tail", TOLD, "D"),
    pin("D", "Ground", "GND", "", "ground", GROUND_OF_SEVERAL),
    pin("E", "Tail/clearance/plate", "TAIL", "", "tail", TOLD, "D"),
    pin("F", "Blackout stop", "BLACKOUT STOP", "", "lamp", TOLD, "D"),
    pin("H", "Rear fog", "FOG", "", "lamp", TOLD, "D"),
    pin("J", "Right turn", "RH TURN", "", "turn", TOLD, "D"),
    pin("K", "+24 V permanent or via ignition", "24V", "", "ignition", FED_BY_KEY, "L"),
    pin("L", "Ground", "GND", "", "ground", GROUND_OF_SEVERAL),
    pin("M", "Stop lamps", "STOP", "", "stop", STOP, "D"),
    pin("N", "Reversing / surge-brake block", "REV", "", "reversing", TOLD, "D"),
  ],
};
