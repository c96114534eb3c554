import { act, type ReactNode } from "react";
import { createRoot } from "react-dom/client";
import { onTestFinished, vi } from "vitest";
import { SessionProvider } from "../../../src/editor/session-context.tsx";
import type { Session } from "../../../src/session/index.ts";

declare global {
  var IS_REACT_ACT_ENVIRONMENT: boolean;
}

/** Puts a screen into the page until the test is over. */
export async function show(session: Session, screen: ReactNode): Promise<HTMLElement> {
  globalThis.IS_REACT_ACT_ENVIRONMENT = true;
  vi.stubGlobal("matchMedia", (media: string) => ({
    media,
    matches: false,
    addEventListener: () => {},
    removeEventListener: () => {},
  }));
  const page = document.createElement("div");
  document.body.append(page);
  const root = createRoot(page);
  onTestFinished(async () => {
    await act(async () => root.unmount());
    page.remove();
    vi.unstubAllGlobals();
  });
  await act(async () => root.render(<SessionProvider session={session}>{screen}</SessionProvider>));
  return page;
}

/** Sends an event as the browser would, and lets the screen settle. */
export async function send(target: EventTarget, event: Event): Promise<boolean> {
  let untouched = true;
  await act(async () => {
    untouched = target.dispatchEvent(event);
  });
  return untouched;
}

export const key = (name: string, held: KeyboardEventInit = {}): KeyboardEvent =>
  new KeyboardEvent("keydown", { key: name, bubbles: true, cancelable: true, ...held });

/** Types into a field the way React notices. */
export async function type(field: HTMLInputElement, text: string): Promise<void> {
  const setter = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value")?.set;
  await act(async () => {
    setter?.call(field, text);
    field.dispatchEvent(new Event("input", { bubbles: true }));
  });
}

/** Types into a field and leaves it by Enter. */
export async function commit(field: HTMLInputElement, text: string): Promise<void> {
  await act(async () => field.focus());
  await type(field, text);
  await send(field, key("Enter"));
}

/** Chooses from a list the way React notices. */
export async function choose(list: HTMLSelectElement, value: string): Promise<void> {
  const setter = Object.getOwnPropertyDescriptor(HTMLSelectElement.prototype, "value")?.set;
  await act(async () => {
    setter?.call(list, value);
    list.dispatchEvent(new Event("change", { bubbles: true }));
  });
}

/** Presses the button of this text or this accessible name. */
export async function press(page: HTMLElement, name: string): Promise<void> {
  const button = [...page.querySelectorAll("button")].find(
    (one) => one.textContent?.trim() === name || one.getAttribute("aria-label") === name,
  );
  if (!button) throw new Error(`no button ${name}`);
  await act(async () => button.click());
}
