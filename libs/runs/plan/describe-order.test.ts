import { expect, it } from 'vitest';
import { planInFull } from './plan-run.js';
import { describeOrder } from './describe-order.js';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { minuteOfIso } from '#units';

const handOver = (resource: string, ...stages: string[]) => ({ kind: 'resource', resource, stages }) as const;

it('joins hand-overs end to end, resource by resource', () => {
  const now = minuteOfIso('2026-11-27T18:00:00Z');
  const full = planInFull(loadRunFile('ok', 'plain-tiles'), { now, scenarios: 100 });
  if (!full.ok) throw new Error(JSON.stringify(full.issues));
  const { references } = full.value.solved;
  const [unmould, patch, pipe, turn, stamp, mould] = [
    ...['unmould', 'patch', 'pipe-foam', 'turn', 'stamp'].map((stage) => `harbour-market/${stage}#1`),
    [...references.resources.keys()].find((id) => id.startsWith('mould:')) ?? '',
  ] as [string, string, string, string, string, string];
  const order = [
    // Of one stage to the next, but not of the same thing.
    handOver(mould, pipe, turn),
    handOver('hands', patch, pipe),
    handOver(mould, patch, turn),
    handOver('hands', unmould, patch),
    handOver('hands', pipe, turn),
  ];
  const told = describeOrder(order, references);
  expect(told.map((each) => each.code === 'conflict.order' && each.stages.map(({ stage }) => stage))).toEqual(
    [
      ['pipe-foam', 'turn'],
      ['unmould', 'patch', 'pipe-foam', 'turn'],
      ['patch', 'turn'],
    ],
  );
  expect(told.map((each) => each.code === 'conflict.order' && each.resource.kind)).toEqual([
    ...['mould', 'hands', 'mould'],
  ]);
  expect(() => describeOrder([handOver('hands', stamp, 'nowhere')], references)).toThrow('nowhere');
});
