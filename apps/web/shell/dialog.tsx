import { useId, useLayoutEffect, useRef, type ReactNode } from 'react';
import './dialog.css';

/**
 * A question that stands before everything else until it is answered; Escape and a tap beside it close it. The
 * browser keeps the focus within, and puts it back afterwards.
 */
export function Dialog({
  title,
  onClose,
  children,
}: {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
}): ReactNode {
  const dialog = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  // Closed before it is taken off the page, or the browser would not put the focus back.
  useLayoutEffect(() => {
    const shown = dialog.current;
    shown?.showModal();
    return () => shown?.close();
  }, []);
  return (
    <dialog
      ref={dialog}
      className="dialog"
      aria-labelledby={titleId}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
      onClick={({ target }) => {
        if (target === dialog.current) onClose();
      }}
    >
      <div className="stack">
        <h2 id={titleId}>{title}</h2>
        {children}
      </div>
    </dialog>
  );
}
