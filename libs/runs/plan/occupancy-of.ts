import type { PlanDocument } from '#contract';
import { minuteOfIso } from '#units';
import type { Busy, RunsInput } from '../input/input.js';
import { cavitiesOf, mouldUse, resolveRuns } from '../input/resolve-run.js';

/**
 * What planned runs occupy, so that another run can be planned around them: hands and equipment during each
 * stage that is still to come, cavities from the pour to the end of the unmoulding.
 * @param input the runs of the document, with their designs and moulds
 */
export function occupancyOf(document: PlanDocument, input: RunsInput): Busy[] {
  const resolved = new Map(resolveRuns(input).map((w) => [w.order.key, w]));
  return document.runs.flatMap((run): Busy[] => {
    const found = resolved.get(run.run);
    if (found === undefined) return [];
    const open = run.stages.filter((stage) => stage.status === 'planned');
    const atBench = open.flatMap((stage) => {
      const time = { from: minuteOfIso(stage.startAt), to: minuteOfIso(stage.endAt) };
      const needs = found.stages.get(stage.key)?.needs ?? [];
      return [
        { resource: 'hands', amount: 1, ...time },
        ...needs.map((need) => ({ resource: `equipment:${need.equipment}`, amount: need.count, ...time })),
      ];
    });
    const inMoulds = [...found.moulds.values()].flatMap((mould) => {
      const use = mouldUse(found.design, mould.key);
      if (use === undefined) return [];
      const pour = run.stages.find((s) => use.makes.has(s.key) && s.status !== 'spoilt');
      const free = run.stages.find((s) => s.key === use.frees && s.status !== 'spoilt');
      if (pour === undefined || free?.status !== 'planned') return [];
      const amount = cavitiesOf({ order: run, design: found.design }, use);
      return [
        {
          resource: `mould:${mould.key}`,
          amount,
          from: minuteOfIso(pour.startAt),
          to: minuteOfIso(free.endAt),
        },
      ];
    });
    return [...atBench, ...inMoulds];
  });
}
