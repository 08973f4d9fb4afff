import { describe, expect, it } from 'vitest';
import type { ClosingState, LateLoss, Stage, StageKind } from '#contract';
import { latenessOf } from './lateness.js';

/** Common practice, no source: what is lost once the state has come. */
const practice: readonly (readonly [StageKind, ClosingState, LateLoss])[] = [
  ['pour', 'medium-trace', 'pieces'],
  ['pour', 'spoonable-until', 'pieces'],
  ['layer', 'bonds-until', 'pieces'],
  ['mix', 'lye-keeps-until', 'pieces'],
  ['split', 'medium-trace', 'pieces'],
  ['unmould', 'cuttable-until', 'looks'],
  ['cut', 'cuttable-until', 'pieces'],
  ['patch', 'pliable-until', 'looks'],
  ['dip', 'takes-coat-until', 'pieces'],
  ['pipe', 'takes-piping-until', 'pieces'],
  ['set-in', 'piping-skinned', 'pieces'],
  ['set-in', 'embeds-until', 'looks'],
  ['sprinkle', 'takes-decor-until', 'looks'],
  ['mist', 'skinned', 'looks'],
  ['glaze', 'takes-glaze-until', 'looks'],
  ['turn', 'cuttable-until', 'looks'],
  ['stamp', 'pliable-until', 'looks'],
];

const one = (kind: StageKind): { stages: Stage[] } => ({
  stages: [{ key: 'it', title: 'It', kind, part: 'base', needs: [] }],
});

describe('what coming too late loses', () => {
  it.each(practice)('%s after %s: %s', (kind, closes, loses) => {
    expect(latenessOf(one(kind), { stage: 'it', closes })).toEqual({ loses });
  });

  it('is told of a time of the design by the kind of the stage', () => {
    expect(latenessOf(one('mix'), { to: 'it' }).loses).toBe('looks');
    expect(latenessOf(one('set-in'), { to: 'it' }).loses).toBe('pieces');
  });

  it('is what the design says, with its reason', () => {
    const late = { loses: 'pieces', reason: 'The rim must be smooth' } as const;
    expect(latenessOf(one('patch'), { stage: 'it', closes: 'pliable-until', late })).toEqual(late);
  });
});
