import { createContext, use } from 'react';
import { pathText, type Issue } from '#units';
import { useTexts } from '../look/use-texts.js';
import { valueAt, type Path, type Value } from './values.js';

/** What the fields of a form share. */
export interface FormFacts {
  readonly content: Value;
  readonly change: (path: Path, value: Value) => void;
  /** What is wrong, beside the field it is about. */
  readonly issues: readonly Issue[];
  /** Sets the ids of its fields apart where a page has several forms alike. */
  readonly scope?: string;
}

export const FormContext = createContext<FormFacts | null>(null);

/** The form a field stands in. @throws outside a form */
export function useForm(): FormFacts {
  const form = use(FormContext);
  if (form === null) throw new Error('a field stands outside its form');
  return form;
}

export interface Field {
  readonly value: Value;
  readonly set: (value: Value) => void;
  readonly id: string;
  /** Sentences about this very field. */
  readonly wrong: readonly string[];
  /** For the input: what describes it, and whether it is wrong. */
  readonly described: { readonly 'aria-describedby'?: string; readonly 'aria-invalid'?: true };
}

/** One field of the form by its path. */
export function useField(path: Path): Field {
  const { content, change, issues, scope } = useForm();
  const texts = useTexts();
  const id = fieldId(path, scope);
  const at = pathText(path);
  const wrong = issues.filter((issue) => pathText(issue.path) === at).map(texts.issue);
  return {
    value: valueAt(content, path),
    set: (value) => change(path, value),
    id,
    wrong,
    described: wrong.length === 0 ? {} : { 'aria-describedby': `${id}-wrong`, 'aria-invalid': true },
  };
}

/** The id of the field at a path, so that a list of what is wrong can lead there. @param scope that of its form */
export function fieldId(path: Path, scope = ''): string {
  return `field-${`${scope}${pathText(path)}`.replaceAll(/[^\w]+/g, '-')}`;
}
