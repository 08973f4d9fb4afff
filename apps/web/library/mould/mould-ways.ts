import { valueAt, type Value } from '../../form/values.js';

/** In the order in which the page of a mould offers them. */
export const mouldWays = ['waterFillG', 'cavityMl', 'shape'] as const;
export type MouldWay = (typeof mouldWays)[number];

const measures = {
  box: ['lengthMm', 'widthMm', 'heightMm'],
  cylinder: ['diameterMm', 'heightMm'],
  'cone-frustum': ['bottomDiameterMm', 'topDiameterMm', 'heightMm'],
  hemisphere: ['diameterMm'],
  'spherical-cap': ['rimDiameterMm', 'depthMm'],
  torus: ['outerDiameterMm', 'tubeDiameterMm'],
  'half-torus': ['outerDiameterMm', 'tubeDiameterMm'],
} as const;

export type Form = keyof typeof measures;
export type Measure = (typeof measures)[Form][number];
export const forms = Object.keys(measures) as readonly Form[];

/** Which measures a form has; none for what is no form. */
export function measuresOf(form: Value): readonly Measure[] {
  return typeof form === 'string' && form in measures ? measures[form as Form] : [];
}

/** In which way a mould tells its cavity; by the weight of water where it does not tell it yet. */
export function mouldWay(content: Value): MouldWay {
  const told = (way: MouldWay | 'waterC'): boolean => valueAt(content, [way]) !== undefined;
  // Beside a volume the measures only tell the form.
  if (told('cavityMl')) return 'cavityMl';
  // The water's temperature stands there from the choice on.
  return told('shape') && !told('waterFillG') && !told('waterC') ? 'shape' : 'waterFillG';
}
