import type { Plug } from "../job/index.ts";

/** What a plug is called: `X1 · pump harness`, or its id alone. */
export const plugTitle = ({ id, name }: Pick<Plug, "id" | "name">): string =>
  name ? `${id} · ${name}` : id;
