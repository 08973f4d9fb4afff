/** The link of a code, from the program's address on. What follows the # stays in the browser and reaches no log. */
export function signInPath(code: string): string {
  return `/#sign-in=${code}`;
}
