import type { Accepted, AcceptedForm, InputRule } from '#units';

/*
 * Schemas say in their errors what would be accepted. An error of zod is a text, so the data goes in it as JSON; what
 * reads issues takes it out again.
 */

/** The error of a schema that accepts a text or value of a certain form. */
export function formError(form: AcceptedForm): string {
  return acceptedError({ kind: 'form', form });
}

/** The error of a schema that accepts this. */
export function acceptedError(accepted: Accepted): string {
  return JSON.stringify(accepted);
}

/** What the error of a schema says would be accepted; undefined for an error of zod's own. */
export function acceptedIn(error: string): Accepted | undefined {
  return error.startsWith('{"kind":') ? (JSON.parse(error) as Accepted) : undefined;
}

/** For a rule over several fields: its name, which libs/words makes a sentence of. */
export function ruleError(rule: InputRule): { readonly params: { readonly rule: InputRule } } {
  return { params: { rule } };
}
