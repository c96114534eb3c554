/** Thrown while a picture is unpacked; the message says what is wrong with it, after "the picture is damaged:". */
export class DamagedPicture extends Error {}
