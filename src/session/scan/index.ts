export * from "./page-desk.ts";
export * from "./trace-port.ts";
