import { expect, it } from 'vitest';
import { checkInput, planRuns } from '#runs';
import { minute } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const file = loadRunFile('ok', 'two-layer');

it('finds nothing wrong with what is right', () => {
  expect(checkInput(file)).toEqual([]);
});

it('places what no clock can be read for at the recipe or the room', () => {
  const cold = { ...file, recipes: file.recipes.map((r) => ({ ...r, batterTemperatureC: 20 })) };
  const workshop = {
    ...cold.workshop,
    room: { temperatureC: 34, humidityPercent: 50, air: 'usual' as const },
  };
  const planned = planRuns({ ...cold, workshop }, { now: minute(29_000_000) });
  expect(planned).toMatchObject({
    ok: false,
    issues: [{ path: ['recipes', 0, 'batterTemperatureC'], value: 20 }, {}],
  });
});

it('asks for keys of their own', () => {
  expect(checkInput({ ...file, moulds: [...file.moulds, ...file.moulds] })).toMatchObject([
    { code: 'input.repeated-key', path: ['moulds', 1, 'key'], value: 'cup' },
  ]);
});

it('wants an own fat to make sense', () => {
  const fat = {
    key: 'odd',
    title: 'Odd',
    saponificationMgKohPerG: { low: 180, used: 190, high: 200 },
    fattyAcidsPercent: { 'C18:1': 180 },
    densityGPerMl: 0.92,
    source: 'a sheet',
  };
  expect(checkInput({ ...file, fats: [fat] })).toMatchObject([{ path: ['fats', 0, 'fattyAcidsPercent'] }]);
});

it('wants each part made once, and each moulded part unmoulded', () => {
  const [design] = file.designs;
  if (design === undefined) throw new Error('no design');
  const stages = design.stages.filter((s) => s.key !== 'pour-over');
  const waits = design.waits.filter((w) => w.stage !== 'pour-over');
  const unmade = checkInput({ ...file, designs: [{ ...design, stages, waits }] });
  expect(unmade.map((i) => i.code)).toEqual(['design.making-stage', 'design.wait-without-making']);
  const kept = design.stages.map((s) => (s.key === 'unmould' ? { ...s, kind: 'turn' as const } : s));
  const held = checkInput({ ...file, designs: [{ ...design, stages: kept }] });
  expect(held.map((i) => i.code)).toEqual(['design.mould-never-freed', 'design.mould-never-freed']);
});

it('wants the day by which it is to be ready after the start', () => {
  const runs = file.runs.map((r) => ({ ...r, readyBy: '2026-11-01' }));
  expect(checkInput({ ...file, runs })).toMatchObject([
    { code: 'run.ready-before-start', value: '2026-11-01' },
  ]);
});
