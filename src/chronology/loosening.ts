import type { Active } from './bounds.ts';
import { AXIOM, type Compiled, type Seed } from './compiled.ts';
import type { Side } from './reasons.ts';

/** A bound that a withdrawal moves; an infinite day stands for "no limit known". */
export interface LooserBound {
  readonly moment: number;
  readonly day: number;
}

/**
 * Finds what one side's bounds become when one statement of a consistent set is taken out, without
 * computing the rest anew. Every bound hangs on one tight link (or one dated statement), and these
 * make a forest; only the moments below a link of the statement can move, and all others are right
 * as they stand. Those are reset together and filled again from their neighbours.
 */
export class Loosening {
  private readonly compiled: Compiled;
  private readonly active: Active;
  private readonly value: Float64Array;
  private readonly sign: 1 | -1;
  private readonly children: readonly (readonly number[])[];
  private readonly heldBy = new Map<number, number[]>();
  private readonly seeds: readonly (readonly Seed[])[];
  private readonly place: Int32Array;
  private readonly fresh: Float64Array;
  private readonly mark: Int32Array;
  private round = 0;

  constructor(compiled: Compiled, active: Active, value: Float64Array, side: Side) {
    this.compiled = compiled;
    this.active = active;
    this.value = value;
    this.sign = side === 'earliest' ? 1 : -1;
    this.seeds = seedsByMoment(compiled, active, side);
    this.children = this.plant();
    this.fresh = new Float64Array(compiled.moments);
    this.mark = new Int32Array(compiled.moments);
    this.place = new Int32Array(compiled.moments);
    compiled.order.forEach((moment, position) => {
      this.place[moment] = position;
    });
  }

  /** Bounds that move when the statement is taken out, in the order of the network. */
  without(statement: number): readonly LooserBound[] {
    const affected = this.below(this.heldBy.get(statement) ?? []);
    if (affected.length === 0) return [];
    for (const moment of affected) this.fresh[moment] = -this.sign * Number.POSITIVE_INFINITY;
    for (let changed = true; changed; ) {
      changed = false;
      for (const moment of affected) if (this.pull(moment, statement)) changed = true;
    }
    return affected
      .filter((moment) => this.fresh[moment] !== this.value[moment])
      .map((moment) => ({ moment, day: this.fresh[moment] as number }));
  }

  /** Hangs every bounded moment on the first tight link that reaches it from a dated statement. */
  private plant(): readonly (readonly number[])[] {
    const { moments } = this.compiled;
    const children: number[][] = Array.from({ length: moments }, () => []);
    const settled = new Uint8Array(moments);
    const queue: number[] = [];
    const settle = (moment: number, owner: number): void => {
      settled[moment] = 1;
      queue.push(moment);
      const held = this.heldBy.get(owner);
      if (held) held.push(moment);
      else this.heldBy.set(owner, [moment]);
    };
    for (let moment = 0; moment < moments; moment += 1) {
      const tight = this.seeds[moment]?.find((seed) => seed.day === this.value[moment]);
      if (tight) settle(moment, tight.owner);
    }
    const [start, list, other] = this.outward();
    for (let next = 0; next < queue.length; next += 1) {
      const moment = queue[next] as number;
      for (let k = start[moment] as number; k < (start[moment + 1] as number); k += 1) {
        const link = list[k] as number;
        const target = other[link] as number;
        if (settled[target] || !this.takesPart(link)) continue;
        const day = (this.value[moment] as number) + this.sign * (this.compiled.days[link] as number);
        if (day !== this.value[target]) continue;
        settle(target, this.compiled.owner[link] as number);
        (children[moment] as number[]).push(target);
      }
    }
    return children;
  }

  private outward(): readonly [Int32Array, Int32Array, Int32Array] {
    const { outStart, outList, to, inStart, inList, from } = this.compiled;
    return this.sign === 1 ? [outStart, outList, to] : [inStart, inList, from];
  }

  private inward(): readonly [Int32Array, Int32Array, Int32Array] {
    const { outStart, outList, to, inStart, inList, from } = this.compiled;
    return this.sign === 1 ? [inStart, inList, from] : [outStart, outList, to];
  }

  private takesPart(link: number): boolean {
    const owner = this.compiled.owner[link] as number;
    return owner === AXIOM || this.active[owner] === 1;
  }

  /** The moments given and all that hang below them, in the order in which days are carried. */
  private below(roots: readonly number[]): readonly number[] {
    this.round += 1;
    const affected: number[] = [];
    const stack = [...roots];
    for (let moment = stack.pop(); moment !== undefined; moment = stack.pop()) {
      if (this.mark[moment] === this.round) continue;
      this.mark[moment] = this.round;
      affected.push(moment);
      for (const child of this.children[moment] ?? []) stack.push(child);
    }
    return affected.sort((a, b) => this.sign * ((this.place[a] as number) - (this.place[b] as number)));
  }

  private pull(moment: number, statement: number): boolean {
    const { sign } = this;
    const better = (day: number, than: number): boolean => (sign === 1 ? day > than : day < than);
    const before = this.fresh[moment] as number;
    let best = before;
    for (const seed of this.seeds[moment] ?? []) {
      if (seed.owner !== statement && better(seed.day, best)) best = seed.day;
    }
    const [start, list, other] = this.inward();
    for (let k = start[moment] as number; k < (start[moment + 1] as number); k += 1) {
      const link = list[k] as number;
      if (!this.takesPart(link) || this.compiled.owner[link] === statement) continue;
      const from = other[link] as number;
      const carried = (this.mark[from] === this.round ? this.fresh[from] : this.value[from]) as number;
      const day = carried + sign * (this.compiled.days[link] as number);
      if (better(day, best)) best = day;
    }
    this.fresh[moment] = best;
    return best !== before;
  }
}

function seedsByMoment(compiled: Compiled, active: Active, side: Side): readonly (readonly Seed[])[] {
  const byMoment: Seed[][] = Array.from({ length: compiled.moments }, () => []);
  for (const seed of side === 'earliest' ? compiled.lowers : compiled.uppers) {
    if (active[seed.owner]) (byMoment[seed.moment] as Seed[]).push(seed);
  }
  return byMoment;
}
