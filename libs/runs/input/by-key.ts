/** Things by the key that others refer to them by. */
export function byKey<T extends { readonly key: string }>(items: readonly T[]): Map<string, T> {
  return new Map(items.map((item) => [item.key, item]));
}
