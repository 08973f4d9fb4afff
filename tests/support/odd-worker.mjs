/**
 * A worker for the tests of the pool, whose tasks do what their input says.
 * @param {{ name: string, input: { forever?: boolean, fill?: boolean, fault?: string } }} task
 */
export default function work({ name, input }) {
  if (input.forever === true) for (;;);
  if (input.fill === true) {
    const kept = [];
    for (;;) kept.push(Array.from({ length: 100_000 }, () => Math.PI));
  }
  if (input.fault !== undefined) throw new Error(input.fault);
  return { name, input };
}
