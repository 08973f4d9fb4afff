import { useCallback, useState } from 'react';

/**
 * The width of an element in CSS pixels, for pictures whose letters must not shrink with them.
 * @returns a ref to put on the element, and its width; 0 until it is known
 */
export function useWidth(): readonly [(element: Element | null) => (() => void) | undefined, number] {
  const [width, setWidth] = useState(0);
  const ref = useCallback((element: Element | null) => {
    if (element === null) return undefined;
    const observer = new ResizeObserver(([entry]) => setWidth(Math.round(entry?.contentRect.width ?? 0)));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, width];
}
