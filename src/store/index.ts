export type * from "./port.ts";
