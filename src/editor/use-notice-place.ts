import { type RefObject, useEffect } from "react";

/**
 * On a phone messages stand under `over`, what lies over a board's head: on its bars they would cover what is
 * about to be tapped.
 */
export function useNoticePlace(over: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const element = over.current;
    if (!element?.parentElement) return;
    const { style } = document.documentElement;
    const observer = new ResizeObserver(() => {
      style.setProperty("--notice-top", `${Math.round(element.getBoundingClientRect().bottom)}px`);
    });
    // The board gives way to every bar that comes over it.
    for (const one of [element, element.parentElement]) observer.observe(one);
    return () => {
      observer.disconnect();
      style.removeProperty("--notice-top");
    };
  }, [over]);
}
