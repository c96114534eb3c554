import type { PartKindName } from "../../job/index.ts";

/** What commands and other screens ask of the diagram board's view, which is no part of the job. */
export type ViewRequest =
  | { readonly ask: "fit" }
  | { readonly ask: "zoom"; readonly by: number }
  /** Shows the named parts, wires or pins, going to their sheet. */
  | { readonly ask: "focus"; readonly refs: readonly string[] }
  /** Opens the words of a part, pin or wire for editing in place. */
  | { readonly ask: "edit"; readonly ref: string }
  | { readonly ask: "palette" }
  | { readonly ask: "menu" }
  /** Lays a part of this kind down in the middle of what is seen. */
  | { readonly ask: "place"; readonly kind: PartKindName };

const listeners = new Set<(request: ViewRequest) => void>();

/** Returns whether a board was there to hear it. */
export function requestView(request: ViewRequest): boolean {
  for (const listener of [...listeners]) listener(request);
  return listeners.size > 0;
}

/** Returns the call that stops listening. */
export function onViewRequest(listener: (request: ViewRequest) => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Brings parts, wires or pins into sight on the diagram board. */
export function focusOn(refs: readonly string[]): void {
  requestView({ ask: "focus", refs });
}
