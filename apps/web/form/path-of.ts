import type { Issue } from '#units';
import type { Problem } from '../api/client.js';
import type { Path } from './values.js';

/** `fats[0].percent` back as its steps. */
export function pathOf(text: string): Path {
  return [...text.matchAll(/\[(\d+)\]|[^.[\]]+/g)].map(([step, index]) =>
    index === undefined ? step : Number(index),
  );
}

/**
 * What the API has against something, as issues with paths from that thing's own root.
 * @param root where the thing stands in what was sent; issues of anything else keep their whole path
 */
export function issuesOf(problem: Problem | undefined, root: Path): Issue[] {
  return (problem?.issues ?? []).map(({ code, path, message, value }) => {
    const steps = pathOf(path);
    const isInside = root.every((step, i) => steps[i] === step);
    return { code, path: isInside ? steps.slice(root.length) : steps, message, value };
  });
}
