import type { IssueWords } from '../../words.js';
import { chemistryIssues } from './chemistry.js';
import { inputIssues } from './input.js';
import { runIssues } from './runs.js';

export { accepted } from './accepted.js';

export const issues: IssueWords = { ...inputIssues, ...chemistryIssues, ...runIssues };
