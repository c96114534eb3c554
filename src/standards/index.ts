export * from "./battery-charge.ts";
export * from "./conductors.ts";
export * from "./din-72552.ts";
export * from "./iec-60757.ts";
export * from "./iec-81346.ts";
export * from "./wire-colour.ts";
