/** Whether what had the keys is gone or greyed, so that no key would do anything. */
export function isFocusLost(): boolean {
  const { activeElement, body } = document;
  return activeElement === null || activeElement === body || activeElement.matches(":disabled");
}

/** Gives the keys to the diagram board. */
export function focusDiagram(): void {
  const board = document.querySelector<HTMLElement>('[aria-label="Diagram board"]');
  board?.focus({ preventScroll: true });
}
