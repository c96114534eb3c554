export * from "./arrangement.ts";
export * from "./face.ts";
export * from "./marks.ts";
export * from "./order.ts";
export * from "./outline.ts";
export * from "./photo.ts";
export * from "./view.ts";
