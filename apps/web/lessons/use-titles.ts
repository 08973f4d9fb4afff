import { useQuery } from '@tanstack/react-query';
import { allRuns } from '../api/all-runs.js';
import { answered, api, type Schemas } from '../api/client.js';
import { useTexts } from '../look/use-texts.js';
import { useLessonsWords } from './lessons-words.js';

type LogEntry = Schemas['LogEntry'];

/** What people call the things that lessons and log name by key; the key itself where nothing else is known. */
export interface Titles {
  readonly recipeTitle: (key: string) => string;
  /** Those of the workshop, as far as they are fetched. */
  readonly runs: readonly Schemas['StoredRun'][];
  readonly runOf: (key: string) => Schemas['StoredRun'] | undefined;
  /** An entry in a few words. @param run the run in whose log it stands */
  readonly entryText: (entry: LogEntry, run: Schemas['StoredRun'] | undefined) => string;
}

export function useTitles(): Titles {
  const { entry: words, saw } = useLessonsWords();
  const recipes = useQuery({ queryKey: ['recipes'], queryFn: () => answered(api.GET('/api/recipes')) }).data;
  const designs = useQuery({ queryKey: ['designs'], queryFn: () => answered(api.GET('/api/designs')) }).data;
  const runs = useQuery({ queryKey: ['runs'], queryFn: allRuns }).data;
  const { states } = useTexts().names;
  const titleIn = (list: readonly { key: string; title: string }[] | undefined, key: string): string =>
    list?.find((each) => each.key === key)?.title ?? key;
  return {
    recipeTitle: (key) =>
      titleIn(
        recipes?.map(({ content }) => content),
        key,
      ),
    runs: runs ?? [],
    runOf: (key) => runs?.find((run) => run.key === key),
    entryText: (entry, run) => {
      const design = designs?.find(({ content }) => content.key === run?.order.design)?.content;
      switch (entry.kind) {
        case 'done':
          return words.done(titleIn(design?.stages, entry.stage));
        case 'not-yet':
          return words.notYet(titleIn(design?.stages, entry.stage));
        case 'seen':
          return words.seen(titleIn(design?.parts, entry.part), states[entry.state].is, saw[entry.saw]);
        default:
          return words.other;
      }
    },
  };
}
