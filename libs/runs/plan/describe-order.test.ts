import { expect, it } from 'vitest';
import { describeOrder } from './describe-order.js';

const handOver = (resource: string, ...stages: string[]) => ({ kind: 'resource', resource, stages }) as const;

it('joins hand-overs end to end, resource by resource', () => {
  const order = [
    handOver('hands', 'run/patch#1', 'run/pipe#1'),
    handOver('mould:tile', 'run/patch#1', 'run/pour#2'),
    handOver('hands', 'run/unmould#1', 'run/patch#1'),
    handOver('hands', 'run/pipe#1', 'run/turn#1'),
    handOver('hands', 'run/glaze#1', 'run/stamp#1'),
  ];
  expect(describeOrder(order, []).map(({ text }) => text)).toEqual([
    'Hands go from “unmould” to “patch” to “pipe” to “turn” in this plan.',
    '“tile” goes from “patch” to “pour” in this plan.',
    'Hands go from “glaze” to “stamp” in this plan.',
  ]);
});
