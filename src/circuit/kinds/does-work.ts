import type { Law } from "./kind.ts";

/** Whether current does something there for its own sake: loads, coils, light-emitting diodes. */
export const doesWork = ({ is }: Law): boolean => is === "load" || is === "coil" || is === "led";
