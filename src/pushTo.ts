/** Adds a value to the group of its key, in the order they come. Example: 1 to "odd", 3 to "odd" gives "odd" → [1, 3]. */
export function pushTo<K, V>(groups: Map<K, V[]>, key: K, value: V): void {
  const there = groups.get(key);
  if (there) there.push(value);
  else groups.set(key, [value]);
}
