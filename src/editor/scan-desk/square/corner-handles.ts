/** Corners of a page or a box in the order in which they are kept. */
export const CORNER_NAMES = ["top left", "top right", "bottom right", "bottom left"] as const;
/** Screen pixels from a corner within which a drag takes hold of it. */
export const GRAB = 34;
