export type * from "./role.ts";
