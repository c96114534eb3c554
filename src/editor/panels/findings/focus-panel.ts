/**
 * Keeps the keyboard's place in a panel when the thing touched is about to go: the panel itself
 * takes the focus, so that Tab goes on from there and not from the top of the page.
 */
export const focusPanel = (touched: Element | null): void =>
  touched?.closest<HTMLElement>("[data-keeps-focus]")?.focus();
