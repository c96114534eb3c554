import { type RefObject, useEffect } from "react";

/** Where messages begin on a phone; read by the status line. */
const NOTICE_TOP = "--notice-top";

/**
 * On a phone messages stand under `over`, what lies over a board's head: on its bars they would cover what is
 * about to be tapped.
 */
export function useNoticePlace(over: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const element = over.current;
    if (!element?.parentElement) return;
    const { style } = document.documentElement;
    let own: string | null = null;
    const observer = new ResizeObserver(() => {
      const top = `${Math.round(element.getBoundingClientRect().bottom)}px`;
      own = top;
      // The whole page is styled anew by it.
      if (style.getPropertyValue(NOTICE_TOP) !== top) style.setProperty(NOTICE_TOP, top);
    });
    // The board gives way to every bar that comes over it.
    for (const one of [element, element.parentElement]) observer.observe(one);
    return () => {
      observer.disconnect();
      // The other board may have set its own meanwhile.
      if (style.getPropertyValue(NOTICE_TOP) === own) style.removeProperty(NOTICE_TOP);
    };
  }, [over]);
}
