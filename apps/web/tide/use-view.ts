import { useCallback, useEffect, useLayoutEffect, useRef, useState, type RefObject } from 'react';
import type { Stretch } from '../look/local-days.js';
import { panned, zoomed } from './view.js';

/** What stretch of time is looked at, and the ways to change it. */
export interface ViewControl {
  readonly view: Stretch;
  /** Pixels. */
  readonly width: number;
  readonly box: RefObject<HTMLDivElement | null>;
  readonly look: (change: (view: Stretch) => Stretch) => void;
}

const STEP = 1.2;

/** @param first what is seen at first @param whole what can be seen at all */
export function useView(first: Stretch, whole: Stretch): ViewControl {
  const box = useRef<HTMLDivElement>(null);
  const [view, look] = useState(first);
  const width = useWidth(box);
  useWheel(box, look, whole);
  return { view, width, box, look };
}

function useWidth(box: RefObject<HTMLDivElement | null>): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = box.current;
    if (element === null) return;
    setWidth(element.clientWidth);
    const observer = new ResizeObserver(() => setWidth(element.clientWidth));
    observer.observe(element);
    return () => observer.disconnect();
  }, [box]);
  return width;
}

/** Ctrl and wheel, which is also what a pinch on a touchpad sends, come closer; a wheel sideways moves on. */
function useWheel(
  box: RefObject<HTMLDivElement | null>,
  look: (change: (view: Stretch) => Stretch) => void,
  whole: Stretch,
): void {
  const turned = useCallback(
    (event: WheelEvent) => {
      const { left, width } = (event.currentTarget as HTMLElement).getBoundingClientRect();
      const share = (event.clientX - left) / width;
      if (event.ctrlKey || event.metaKey) {
        event.preventDefault();
        const factor = STEP ** (event.deltaY / 40);
        look((view) => zoomed(view, factor, view.from + share * (view.to - view.from), whole));
      } else if (Math.abs(event.deltaX) > Math.abs(event.deltaY)) {
        event.preventDefault();
        look((view) => panned(view, event.deltaX / width, whole));
      }
    },
    [look, whole],
  );
  useEffect(() => {
    const element = box.current;
    // React listens passively, and then the page would zoom as well.
    element?.addEventListener('wheel', turned, { passive: false });
    return () => element?.removeEventListener('wheel', turned);
  }, [box, turned]);
}
