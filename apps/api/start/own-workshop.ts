import { workshopFacts } from '#contract';
import type { Repositories, StoredWorkshop } from '#storage';

/** Until its maker says otherwise; the pages do so in their language. */
const TITLE = 'My workshop';

/**
 * The maker's own workshop: the one that is there, or an empty one in this machine's time zone and without hours, which the pages
 * ask the maker to begin with.
 */
export async function ensureOwnWorkshop({ workshops }: Repositories): Promise<StoredWorkshop> {
  const found = (await workshops.list()).find(({ demoOf }) => demoOf === null);
  if (found !== undefined) return found;
  const none = { monday: [], tuesday: [], wednesday: [], thursday: [], friday: [], saturday: [], sunday: [] };
  const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
  const facts = workshopFacts.parse({ title: TITLE, timeZone, hours: { weekly: none } });
  return workshops.create(facts, { begun: false });
}
