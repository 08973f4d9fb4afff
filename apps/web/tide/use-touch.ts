import { useRef, type PointerEvent } from 'react';
import type { ViewControl } from './use-view.js';
import { panned, zoomed } from './view.js';
import type { Stretch } from '../look/local-days.js';

/** Handlers for one finger that moves the water along, and two that pinch it. */
export interface TouchHandlers {
  readonly onPointerDown: (event: PointerEvent<HTMLElement>) => void;
  readonly onPointerMove: (event: PointerEvent<HTMLElement>) => void;
  readonly onPointerUp: (event: PointerEvent<HTMLElement>) => void;
  readonly onPointerCancel: (event: PointerEvent<HTMLElement>) => void;
}

export function useTouch({ width, look }: ViewControl, whole: Stretch): TouchHandlers {
  const fingers = useRef(new Map<number, number>());
  const ended = (event: PointerEvent<HTMLElement>): void => {
    fingers.current.delete(event.pointerId);
  };
  return {
    onPointerDown(event) {
      if (event.button !== 0) return;
      fingers.current.set(event.pointerId, event.clientX);
      event.currentTarget.setPointerCapture(event.pointerId);
    },
    onPointerMove(event) {
      const before = fingers.current.get(event.pointerId);
      if (before === undefined || width === 0) return;
      const here = event.clientX;
      const other = [...fingers.current].find(([id]) => id !== event.pointerId)?.[1];
      fingers.current.set(event.pointerId, here);
      if (other === undefined) {
        look((view) => panned(view, (before - here) / width, whole));
        return;
      }
      const left = event.currentTarget.getBoundingClientRect().left;
      const factor = Math.max(20, Math.abs(before - other)) / Math.max(20, Math.abs(here - other));
      const share = ((here + other) / 2 - left) / width;
      look((view) => zoomed(view, factor, view.from + share * (view.to - view.from), whole));
    },
    onPointerUp: ended,
    onPointerCancel: ended,
  };
}
