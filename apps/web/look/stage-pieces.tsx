import type { ReactNode } from 'react';
import type { PlannedStage, RunGroup } from '#contract';
import { useWords } from '../words/words.js';
import { useTexts } from './use-texts.js';

/** Where a stage is not done for all pieces: for how many, and of which groups. */
export function StagePieces({
  stage: { pieces, groups },
  all = [],
}: {
  readonly stage: Pick<PlannedStage, 'pieces' | 'groups'>;
  /** The groups of the run. */
  readonly all: readonly Pick<RunGroup, 'key' | 'title'>[] | undefined;
}): ReactNode {
  const { run: words } = useWords();
  const texts = useTexts();
  if (pieces === undefined) return null;
  const titles = groups?.map((key) => all.find((group) => group.key === key)?.title ?? key);
  return (
    <span className="soft">
      {' · '}
      {titles === undefined ? words.pieces(pieces) : words.ofGroups(texts.and(titles), pieces)}
    </span>
  );
}
