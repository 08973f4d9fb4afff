import { valueAt, type Value } from '../../form/values.js';
import type { Around } from '../checks.js';

/** A run file in which so many pieces of a design are made: what the API works amounts and filling times out from. */
export function designFile(design: Value, wish: Value, around: Around): object {
  return {
    schema: 'benchtide.run-file/3',
    workshop: { ...around.workshop, materials: [] },
    moulds: around.moulds,
    fats: around.fats,
    recipes: around.recipes,
    designs: [{ ...(design as object), key: 'design', title: 'Design' }],
    runs: [
      {
        key: 'preview',
        title: 'Preview',
        design: 'design',
        count: valueAt(wish, ['count']),
        startAfter: '2026-01-05T09:00',
      },
    ],
  };
}
