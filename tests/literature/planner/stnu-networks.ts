import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Stnu } from '#planner';

export interface LabelledNetwork {
  readonly name: string;
  readonly stnu: Stnu;
  readonly controllable: boolean;
}

interface NetworkFile {
  readonly networks: readonly {
    readonly name: string;
    readonly points: readonly string[];
    readonly requirement: readonly (readonly [string, string, number | null, number | null])[];
    readonly contingent: readonly (readonly [string, string, number, number])[];
    readonly dynamicallyControllable: boolean;
  }[];
}

/** The networks of `stnu-examples.json`, of papers, and of `stnu-random.json`; see stnu-citation.md. */
export function labelledNetworks(file: 'stnu-examples.json' | 'stnu-random.json'): LabelledNetwork[] {
  // From the project's folder, so that compiled benches find it too.
  const text = readFileSync(join('tests', 'literature', 'planner', file), 'utf8');
  return (JSON.parse(text) as NetworkFile).networks.map((network) => {
    const at = (point: string): number => network.points.indexOf(point);
    return {
      name: network.name,
      controllable: network.dynamicallyControllable,
      stnu: {
        points: network.points.length,
        requirements: network.requirement.map(([from, to, min, max]) => ({
          from: at(from),
          to: at(to),
          ...(min !== null && { min }),
          ...(max !== null && { max }),
        })),
        contingents: network.contingent.map(([from, to, min, max]) => ({
          from: at(from),
          to: at(to),
          min,
          max,
        })),
      },
    };
  });
}
