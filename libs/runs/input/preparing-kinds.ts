import type { StageKind } from '#contract';
import { commonPractice, hands, type StageKindFacts } from './stage-kind-facts.js';

/** The kinds of stages that prepare a batch before any part is made of it. */
export const preparingKinds = {
  'make-lye': {
    makes: false,
    loses: 'looks',
    frees: false,
    prepares: true,
    handsOn: hands(15, 0),
    cautions: ['caution.lye', 'caution.lye-making'],
  },
  'melt-fats': {
    makes: false,
    loses: 'looks',
    frees: false,
    prepares: true,
    handsOn: hands(15, 0),
    cautions: ['caution.hot-fats'],
  },
  'melt-base': {
    makes: false,
    loses: 'looks',
    frees: false,
    prepares: true,
    handsOn: hands(15, 0),
    cautions: ['caution.hot-base'],
  },
  mix: {
    makes: false,
    loses: 'looks',
    frees: false,
    prepares: true,
    handsOn: hands(15, 0),
    after: [{ of: 'batch', kinds: ['make-lye', 'melt-fats'] }],
    batch: [
      {
        from: 'make-lye',
        opens: 'lye-cool',
        closes: 'lye-keeps-until',
        loses: 'pieces',
        evidence: commonPractice,
      },
      // Fats are warmed again where they have grown too cool.
      { from: 'melt-fats', opens: 'fats-cool', evidence: commonPractice },
    ],
    cautions: ['caution.lye'],
  },
  split: {
    makes: false,
    loses: 'pieces',
    frees: false,
    prepares: true,
    handsOn: hands(10, 0),
    after: [{ of: 'batch', kinds: ['mix'] }],
    batch: [
      { from: 'mix', opens: 'emulsion', closes: 'medium-trace', loses: 'pieces', evidence: commonPractice },
    ],
    cautions: ['caution.lye', 'caution.dust'],
  },
  cook: {
    makes: false,
    loses: 'pieces',
    frees: false,
    prepares: true,
    handsOn: hands(90, 0),
    after: [{ of: 'batch', kinds: ['mix', 'split'] }],
    batch: [{ from: 'mix', opens: 'light-trace', evidence: commonPractice }],
    cautions: ['caution.lye', 'caution.cooking'],
  },
  rebatch: {
    makes: false,
    loses: 'looks',
    frees: false,
    prepares: true,
    handsOn: hands(60, 0),
    after: [{ of: 'batch', kinds: ['mix', 'cook'] }],
    cautions: ['caution.fresh-soap', 'caution.cooking'],
  },
} satisfies Partial<Record<StageKind, StageKindFacts>>;
