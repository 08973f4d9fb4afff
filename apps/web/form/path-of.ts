import type { Issue } from '#units';
import type { Problem } from '../api/client.js';
import type { Path } from './values.js';

/** `fats[0].percent` back as its steps. */
export function pathOf(text: string): Path {
  return [...text.matchAll(/\[(\d+)\]|[^.[\]]+/g)].map(([step, index]) =>
    index === undefined ? step : Number(index),
  );
}

/** An issue of the API as the data that it was made from, to be told in the language of the page. */
export function issueOf({ code, path, value, data }: ListedIssue): Issue {
  return { ...data, code, path: pathOf(path), ...(value !== undefined && { value }) } as Issue;
}

export type ListedIssue = NonNullable<Problem['issues']>[number];

/**
 * What the API has against something, as issues with paths from that thing's own root.
 * @param root where the thing stands in what was sent; issues of anything else keep their whole path
 */
export function issuesOf(problem: Problem | undefined, root: Path): Issue[] {
  return (problem?.issues ?? []).map(issueOf).map((issue) => {
    const isInside = root.every((step, i) => issue.path[i] === step);
    return isInside ? { ...issue, path: issue.path.slice(root.length) } : issue;
  });
}
