/**
 * The way in which the letters beside the contacts of round plugs run, seen from the face where plug
 * and socket meet, beginning at the key or groove: clockwise where the plug holds pins, anticlockwise
 * where it holds sockets. US Army TM 9-2350-311-20-1, 2-13.1 (cable identifiers, receptacles and plugs).
 */
export const LETTER_DIRECTION = {
  pins: "clockwise",
  sockets: "anticlockwise",
} as const;

/** Where the rule is published, as it is named to the user. */
export const LETTER_DIRECTION_SOURCE = "US Army TM 9-2350-311-20-1";
