/**
 * Puts what an element says on the clipboard. Over plain http a page has no `navigator.clipboard`, but it may still
 * copy what is marked; then the text stays marked, so that the reader sees what was taken.
 * @returns whether it is done: a browser may refuse both
 */
export async function copyText(from: HTMLElement): Promise<boolean> {
  const clipboard = navigator.clipboard as Clipboard | undefined;
  try {
    if (clipboard === undefined) return copyMarked(from);
    await clipboard.writeText(from.textContent);
    return true;
  } catch {
    return false;
  }
}

function copyMarked(from: HTMLElement): boolean {
  getSelection()?.selectAllChildren(from);
  // oxlint-disable-next-line typescript/no-deprecated -- nothing else can copy from a page over plain http
  return document.execCommand('copy');
}
