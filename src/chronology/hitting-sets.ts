/** Result of a search for hitting sets. */
export interface HittingSets {
  readonly sets: readonly (readonly number[])[];
  readonly complete: boolean;
}

const MOST_NODES = 50_000;

/**
 * All inclusion-minimal sets that meet every one of the given sets (Reiter 1987).
 * @example hittingSets([[1, 2], [1, 3]]) // { sets: [[1], [2, 3]], complete: true }
 */
export function hittingSets(collection: readonly (readonly number[])[]): HittingSets {
  const found: (readonly number[])[] = [];
  const seen = new Set<string>();
  let level: (readonly number[])[] = [[]];
  let nodes = 0;
  while (level.length > 0) {
    const next: (readonly number[])[] = [];
    for (const chosen of level) {
      nodes += 1;
      if (nodes > MOST_NODES) return { sets: found, complete: false };
      if (found.some((smaller) => smaller.every((one) => chosen.includes(one)))) continue;
      const unmet = collection.find((set) => !set.some((member) => chosen.includes(member)));
      if (!unmet) {
        found.push(chosen);
        continue;
      }
      for (const member of unmet) {
        const more = [...chosen, member].sort((a, b) => a - b);
        const key = more.join(',');
        if (!seen.has(key)) {
          seen.add(key);
          next.push(more);
        }
      }
    }
    level = next;
  }
  return { sets: found, complete: true };
}
