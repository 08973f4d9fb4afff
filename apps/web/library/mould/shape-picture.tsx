import type { ReactNode } from 'react';
import type { Value } from '../../form/values.js';
import type { Form } from './mould-ways.js';

/** Sections through cavities, standing in their mould. Decoration: the form is named beside it. */
const sections: Readonly<Record<Form, string>> = {
  box: 'M60,20V75H180V20Z',
  cylinder: 'M85,20V80H155V20Z',
  'cone-frustum': 'M75,20L95,80H145L165,20Z',
  hemisphere: 'M65,20A55,55 0 0 0 175,20Z',
  'spherical-cap': 'M65,20A72,72 0 0 0 175,20Z',
  torus: 'M60,45A22,22 0 1 0 104,45A22,22 0 1 0 60,45ZM136,45A22,22 0 1 0 180,45A22,22 0 1 0 136,45Z',
  'half-torus': 'M60,20A22,22 0 0 0 104,20ZM136,20A22,22 0 0 0 180,20Z',
};

export function ShapePicture({ form }: { readonly form: Value }): ReactNode {
  if (typeof form !== 'string' || !(form in sections)) return null;
  return (
    <svg viewBox="0 0 240 95" className="shape-picture" aria-hidden>
      <path d="M40,20H200V88H40Z" className="body" />
      <path d={sections[form as Form]} className="cavity" />
      <line x1={30} x2={210} y1={20} y2={20} className="rim" />
    </svg>
  );
}
