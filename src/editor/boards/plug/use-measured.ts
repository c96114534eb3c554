import { type RefObject, useLayoutEffect } from "react";
import type { Size } from "./camera.ts";

/** Tells the size inside an element, pixels, before it is first painted and whenever it changes. */
export function useMeasured(
  ref: RefObject<HTMLElement | null>,
  onSize: (size: Size) => void,
): void {
  useLayoutEffect(() => {
    const box = ref.current;
    if (!box) return;
    const measure = () => onSize({ width: box.clientWidth, height: box.clientHeight });
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(box);
    return () => observer.disconnect();
  }, [ref, onSize]);
}
