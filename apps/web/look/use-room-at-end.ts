import { useCallback } from 'react';

/**
 * Leaves as much room free at the end of every page as an element fixed there takes, so that it covers nothing for good.
 * @param property the custom property of the document that holds the element's height; base.css adds them up
 * @returns a ref to put on the element
 */
export function useRoomAtEnd(
  property: '--status' | '--nudges',
): (element: HTMLElement | null) => (() => void) | undefined {
  return useCallback(
    (element: HTMLElement | null) => {
      if (element === null) return undefined;
      const { style } = document.documentElement;
      const observer = new ResizeObserver(() =>
        style.setProperty(property, `${String(element.offsetHeight)}px`),
      );
      observer.observe(element);
      return () => {
        observer.disconnect();
        style.removeProperty(property);
      };
    },
    [property],
  );
}
