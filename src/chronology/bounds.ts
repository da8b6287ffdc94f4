import { AXIOM, type Compiled, type Seed } from './compiled.ts';

/** Tightest day bounds of every moment; infinite where nothing bounds it. */
export interface Bounds {
  readonly earliest: Float64Array;
  readonly latest: Float64Array;
  /** Components that hold a loop whose days add to more than nothing; empty as a rule. */
  readonly loops: readonly number[];
}

/** Which statements take part: 1 at their index. */
export type Active = Uint8Array;

/** Members of a date with gaps that are still possible, by the statement's index. */
export type Domains = ReadonlyMap<number, readonly number[]>;

/** Days from the present set of links, one direction of propagation. */
interface Pass {
  readonly value: Float64Array;
  readonly start: Int32Array;
  readonly list: Int32Array;
  readonly other: Int32Array;
  readonly sign: 1 | -1;
}

/**
 * Propagates the bounds of the active statements: earliest days forward, latest days backward,
 * component by component; the origin is kept out, so that one contradiction does not spoil
 * every bound. A positive loop is found first and walked only as often as it has moments.
 */
export function propagate(compiled: Compiled, active: Active, domains?: Domains): Bounds {
  const earliest = new Float64Array(compiled.moments).fill(Number.NEGATIVE_INFINITY);
  const latest = new Float64Array(compiled.moments).fill(Number.POSITIVE_INFINITY);
  seed(compiled.lowers, active, domains, (moment, day) => {
    if (day > (earliest[moment] as number)) earliest[moment] = day;
  });
  seed(compiled.uppers, active, domains, (moment, day) => {
    if (day < (latest[moment] as number)) latest[moment] = day;
  });
  if (domains) seedMembers(compiled, active, domains, earliest, latest);
  const loops = findLoops(compiled, active);
  const count = compiled.start.length - 1;
  const forward: Pass = {
    value: earliest,
    start: compiled.inStart,
    list: compiled.inList,
    other: compiled.from,
    sign: 1,
  };
  const backward: Pass = {
    value: latest,
    start: compiled.outStart,
    list: compiled.outList,
    other: compiled.to,
    sign: -1,
  };
  for (let c = 0; c < count; c += 1) settle(compiled, active, c, forward, loops.includes(c));
  for (let c = count - 1; c >= 0; c -= 1) settle(compiled, active, c, backward, loops.includes(c));
  return { earliest, latest, loops };
}

/** True where some moment would have to lie both after and before a day, or a loop adds up. */
export function isCrossed(bounds: Bounds): boolean {
  if (bounds.loops.length > 0) return true;
  return bounds.earliest.some((day, moment) => day > (bounds.latest[moment] as number));
}

function seed(
  seeds: readonly Seed[],
  active: Active,
  domains: Domains | undefined,
  apply: (moment: number, day: number) => void,
): void {
  for (const { owner, moment, day } of seeds) {
    if (owner !== AXIOM && (!active[owner] || domains?.has(owner))) continue;
    apply(moment, day);
  }
}

/** Bounds from dates with gaps of which only some members are left: the hull of those. */
function seedMembers(
  compiled: Compiled,
  active: Active,
  domains: Domains,
  earliest: Float64Array,
  latest: Float64Array,
): void {
  for (const [owner, left] of domains) {
    if (!active[owner]) continue;
    const choice = compiled.network.statements[owner]?.choice ?? [];
    const shape = choice[0] ?? [];
    shape.forEach((link, position) => {
      const days = left.map((member) => choice[member]?.[position]?.days ?? Number.NaN);
      const weakest = Math.min(...days);
      if (link.from < 0) earliest[link.to] = Math.max(earliest[link.to] as number, weakest);
      else latest[link.from] = Math.min(latest[link.from] as number, -weakest);
    });
  }
}

function isActive(compiled: Compiled, active: Active, link: number): boolean {
  const owner = compiled.owner[link] as number;
  return owner === AXIOM || active[owner] === 1;
}

/** Brings one component to rest, taking over what its neighbours carried to it. */
function settle(compiled: Compiled, active: Active, c: number, pass: Pass, looping: boolean): void {
  const from = compiled.start[c] as number;
  const to = compiled.start[c + 1] as number;
  const rounds = to - from === 1 && !looping ? 1 : to - from + 1;
  for (let round = 0; round < rounds; round += 1) {
    let changed = false;
    for (let i = from; i < to; i += 1) {
      if (pull(compiled, active, compiled.order[i] as number, pass)) changed = true;
    }
    if (!changed) return;
  }
}

/** Tightens one moment by its links; true where it moved. */
function pull(compiled: Compiled, active: Active, moment: number, pass: Pass): boolean {
  const { value, start, list, other, sign } = pass;
  let best = value[moment] as number;
  const before = best;
  for (let i = start[moment] as number; i < (start[moment + 1] as number); i += 1) {
    const link = list[i] as number;
    if (!isActive(compiled, active, link)) continue;
    const day = (value[other[link] as number] as number) + sign * (compiled.days[link] as number);
    if (sign === 1 ? day > best : day < best) best = day;
  }
  value[moment] = best;
  return best !== before;
}

/** Components with a loop whose days add to more than nothing: labels from zero never come to rest. */
function findLoops(compiled: Compiled, active: Active): readonly number[] {
  const loops: number[] = [];
  const label = new Float64Array(compiled.moments);
  for (let c = 0; c + 1 < compiled.start.length; c += 1) {
    const from = compiled.start[c] as number;
    const to = compiled.start[c + 1] as number;
    if (to - from > 1 || hasSelfLink(compiled, compiled.order[from] as number)) {
      if (!comesToRest(compiled, active, c, label)) loops.push(c);
    }
  }
  return loops;
}

function hasSelfLink(compiled: Compiled, moment: number): boolean {
  for (let i = compiled.inStart[moment] as number; i < (compiled.inStart[moment + 1] as number); i += 1) {
    if (compiled.from[compiled.inList[i] as number] === moment) return true;
  }
  return false;
}

function comesToRest(compiled: Compiled, active: Active, c: number, label: Float64Array): boolean {
  const from = compiled.start[c] as number;
  const to = compiled.start[c + 1] as number;
  for (let round = 0; round <= to - from; round += 1) {
    let changed = false;
    for (let i = from; i < to; i += 1) {
      const moment = compiled.order[i] as number;
      for (let k = compiled.inStart[moment] as number; k < (compiled.inStart[moment + 1] as number); k += 1) {
        const link = compiled.inList[k] as number;
        const other = compiled.from[link] as number;
        if (compiled.component[other] !== c || !isActive(compiled, active, link)) continue;
        const day = (label[other] as number) + (compiled.days[link] as number);
        if (day > (label[moment] as number)) {
          label[moment] = day;
          changed = true;
        }
      }
    }
    if (!changed) return true;
  }
  return false;
}
