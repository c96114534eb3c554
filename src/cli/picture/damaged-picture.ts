/** Thrown while a picture is unpacked; the message says what is wrong with it, after "the picture is damaged:". */
export class DamagedPicture extends Error {}

/** Thrown for a picture that may well be whole but is not unpacked; the message says why and what to do. */
export class RefusedPicture extends Error {}
