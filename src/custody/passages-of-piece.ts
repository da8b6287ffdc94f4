import { groupBy } from '../base/group-by.ts';
import type { Entry } from '../model/entry.ts';
import type { Act, ActLine } from './acts.ts';
import { FOR_ANOTHER } from './capacities.ts';
import type { How, Passage } from './passages.ts';

/** An act, as it concerns one of the smallest pieces. */
export interface ActAt {
  readonly act: Act;
  readonly gives: readonly ActLine[];
  readonly gets: readonly ActLine[];
  /** Those through whom it went. */
  readonly between: readonly ActLine[];
}

type Holding = Entry<'holding'>;

/** A holding of one piece that no entry tells of. */
export interface Drawn {
  /** Named by its holder and its acts, never by a count, so that hiding one renames no other. */
  readonly name: string;
  readonly holders: readonly string[];
  /** The act by which it began, and by which it ended, or during which it was held; null where no act says so. */
  readonly got: Act | null;
  readonly gave: Act | null;
  readonly during: Act | null;
  readonly forAnother: boolean;
  readonly piece: string;
}

/** A party of an act that has several holdings of which this may be one, or one that several acts may mean. */
export interface Unclear {
  readonly act: Act;
  readonly line: ActLine;
  readonly candidates: readonly string[];
}

/** What an act does to a holding of one of its parties. */
type Effect = 'begins' | 'ends' | 'held then' | 'named';

/** A side of an act: whose holding, in which capacity, and what becomes of it. */
interface Side {
  readonly act: Act;
  readonly how: How;
  readonly side: 'gives' | 'gets';
  readonly lines: readonly ActLine[];
  readonly forAnother: boolean;
  readonly effect: Effect;
  /** Holdings that are meant: written ones, later drawn ones. */
  holdings: readonly string[];
  isUnclear: boolean;
}

/** Who gave and who got one piece by each act, and the holdings that must be drawn for it. */
export function holdersOfPiece(
  piece: string,
  acts: readonly ActAt[],
  written: readonly Holding[],
): { readonly passages: readonly Passage[]; readonly drawn: readonly Drawn[]; readonly unclear: readonly Unclear[] } {
  const parties = new Parties(acts, written);
  const sides = acts.flatMap((one) => sidesOf(one, parties));
  const unclear = chooseWritten(sides, parties);
  const drawn = drawMissing(piece, sides, parties);
  const passages = acts.flatMap((one) => passagesOf(one, sides, parties));
  return { passages, drawn, unclear };
}

/** What is written of the parties of one piece: their holdings, and the acts by which they got and gave it. */
class Parties {
  private readonly written: readonly Holding[];
  private readonly acts: readonly ActAt[];

  constructor(acts: readonly ActAt[], written: readonly Holding[]) {
    this.acts = acts;
    this.written = written;
  }

  holdingsOf(party: string, forAnother: boolean): readonly Holding[] {
    return this.written.filter(
      ({ keys }) =>
        (keys.holder === party || (keys['shared-with'] ?? []).includes(party)) &&
        FOR_ANOTHER.includes(keys.capacity) === forAnother,
    );
  }

  holding(id: string): Holding | undefined {
    return this.written.find((one) => one.id === id);
  }

  private got(party: string, forAnother: boolean): boolean {
    return this.acts.some(
      ({ act, gets }) =>
        act.kind !== 'brought back' &&
        (act.kind === 'for a time') === forAnother &&
        gets.some((one) => one.party === party),
    );
  }

  /** True where all that is written says that a party has the piece for another who goes on possessing it. */
  hasForAnother(party: string): boolean {
    if (this.holdingsOf(party, false).length > 0 || this.got(party, false)) return false;
    return this.holdingsOf(party, true).length > 0 || this.got(party, true);
  }

  /** What a return brings back: what had been taken, what had been lent or left, or not known which. */
  howReturned({ gives }: ActAt): How {
    const kinds = gives.map(({ party, holding }) => {
      const named = holding === null ? undefined : this.holding(holding);
      if (named) return FOR_ANOTHER.includes(named.keys.capacity);
      const lent = this.holdingsOf(party, true).length > 0 || this.got(party, true);
      const taken = this.holdingsOf(party, false).length > 0 || this.got(party, false);
      return lent === taken ? null : lent;
    });
    if (kinds.length > 0 && kinds.every((one) => one === true)) return 'brought back';
    return kinds.length > 0 && kinds.every((one) => one === false) ? 'taken back' : 'returned';
  }

  /**
   * True where the piece can have come back: from those who got it by one act, along the acts, to the other act. What was
   * brought back goes no further: a return follows the acts that it undoes.
   */
  leadsTo(from: Act, to: Act): boolean {
    const first = from.kind === 'brought back' ? undefined : this.acts.find(({ act }) => act === from);
    const has = new Set(first?.gets.map((one) => one.party) ?? []);
    const others = this.acts.filter(({ act }) => act !== from);
    for (let size = -1; size < has.size; ) {
      size = has.size;
      for (const { act, gives, gets } of others) {
        if (act.kind !== 'brought back' && gives.some((one) => has.has(one.party)))
          for (const one of gets) has.add(one.party);
      }
    }
    return others.some(({ act, gives }) => act === to && gives.some((one) => has.has(one.party)));
  }
}

function sidesOf(one: ActAt, parties: Parties): readonly Side[] {
  const { act } = one;
  const how = act.kind === 'brought back' ? parties.howReturned(one) : act.kind;
  const side = (name: 'gives' | 'gets', forAnother: boolean, effect: Effect): readonly Side[] =>
    one[name].length === 0
      ? []
      : [{ act, how, side: name, lines: one[name], forAnother, effect, holdings: [], isUnclear: false }];
  const giverHasForAnother = one.gives.length > 0 && one.gives.every(({ party }) => parties.hasForAnother(party));
  switch (how) {
    case 'for a time':
      return [...side('gives', giverHasForAnother, 'held then'), ...side('gets', true, 'begins')];
    case 'brought back':
      return [...side('gives', true, 'ends'), ...side('gets', false, 'named')];
    case 'returned':
      return [...side('gives', giverHasForAnother, 'ends'), ...side('gets', false, 'held then')];
    default:
      return [...side('gives', giverHasForAnother, 'ends'), ...side('gets', false, 'begins')];
  }
}

/** Finds the written holdings that the sides mean; those that stay unclear bind nothing. */
function chooseWritten(sides: readonly Side[], parties: Parties): readonly Unclear[] {
  const unclear: Unclear[] = [];
  const giveUp = (side: Side, line: ActLine, candidates: readonly string[]): void => {
    side.isUnclear = side.effect !== 'named';
    side.holdings = [];
    if (side.isUnclear) unclear.push({ act: side.act, line, candidates });
  };
  for (const side of sides) {
    const found = side.lines.map((line) => candidatesOf(side, line, sides, parties));
    side.holdings = [...new Set(found.flatMap((some) => (some.length === 1 ? some : [])))];
    const several = found.findIndex((some) => some.length > 1 && !some.some((id) => side.holdings.includes(id)));
    if (several !== -1) giveUp(side, side.lines[several] as ActLine, found[several] as readonly string[]);
  }
  for (const [holding, all] of byHolding(sides)) {
    const began = all.filter((one) => one.effect === 'begins');
    const ended = all.filter((one) => one.effect === 'ends');
    const comesBack = began.some((got) => ended.some((gave) => parties.leadsTo(gave.act, got.act)));
    // One holding begins once and ends once, and not by an act that comes after its end.
    const apart = [began, ended].flatMap((some) => (some.length > 1 || comesBack ? some : []));
    const meant = apart.filter((one) => isNamed(one, holding, parties));
    for (const side of apart) {
      if (meant.includes(side)) continue;
      // Where the file says which act is meant, the other one tells of a holding that nobody wrote.
      if (meant.some((other) => other.effect === side.effect || comesBack)) side.holdings = [];
      else giveUp(side, side.lines[0] as ActLine, [holding]);
    }
  }
  return unclear;
}

function byHolding(sides: readonly Side[]): ReadonlyMap<string, readonly Side[]> {
  const pairs = sides.flatMap((side) => side.holdings.map((holding) => ({ holding, side })));
  return new Map([...groupBy(pairs, (one) => one.holding)].map(([id, some]) => [id, some.map((one) => one.side)]));
}

/** True where the file says that a side means this holding: the line names it, or `from` ties it to the other side. */
function isNamed(side: Side, holding: string, parties: Parties): boolean {
  if (side.lines.some((line) => line.holding === holding)) return true;
  const others = side.act.lines.filter(({ role }) => role === (side.side === 'gives' ? 'gets' : 'gives'));
  const theirs = others.flatMap(({ party }) => [true, false].flatMap((one) => parties.holdingsOf(party, one)));
  const from = parties.holding(holding)?.keys.from;
  return side.side === 'gets' ? theirs.some((one) => one.id === from) : theirs.some((one) => one.keys.from === holding);
}

/** Written holdings that a line may mean: that it names; else of this party and capacity, fewer where `from` tells. */
function candidatesOf(side: Side, line: ActLine, sides: readonly Side[], parties: Parties): readonly string[] {
  if (line.holding !== null) return parties.holding(line.holding) ? [line.holding] : [];
  const all = parties.holdingsOf(line.party, side.forAnother);
  const usual = all.filter((one) => one.keys.capacity === CAPACITY_OF[side.act.event.keys.kind]);
  const some =
    usual.length > 0 && usual.length < all.length
      ? usual
      : all.length === 0 && side.forAnother && side.act.event.keys.kind === 'consignment'
        ? parties.holdingsOf(line.party, false).filter((one) => one.keys.capacity === 'agent or dealer')
        : all;
  if (some.length <= 1) return some.map((one) => one.id);
  const tied = some.filter((one) => isNamed(side, one.id, parties));
  if (tied.length === 1) return tied.map((one) => one.id);
  const named = new Set(
    sides.flatMap((other) => (other === side ? [] : other.lines.flatMap((one) => one.holding ?? []))),
  );
  const left = some.filter((one) => !named.has(one.id));
  return (left.length === 1 ? left : some).map((one) => one.id);
}

/** The capacity in which an act gives a piece for a time. */
const CAPACITY_OF: Readonly<Record<string, Holding['keys']['capacity']>> = {
  loan: 'borrower',
  deposit: 'depositary',
  consignment: 'consignee',
  pledge: 'pledgee',
};

/**
 * Draws a holding for every side that has none. A party that got the piece once and gave it once had it in between, where
 * the piece cannot have come back in between; else each act has a holding of its own.
 */
function drawMissing(piece: string, sides: readonly Side[], parties: Parties): readonly Drawn[] {
  const drawn: Drawn[] = [];
  const add = (sidesOfIt: readonly Side[], acts: Pick<Drawn, 'got' | 'gave' | 'during'>): void => {
    const [first] = sidesOfIt as [Side];
    const holders = [...new Set(first.lines.map((one) => one.party))];
    const name = [
      holders[0],
      acts.got && `got.${acts.got.event.id}`,
      acts.gave && `gave.${acts.gave.event.id}`,
      acts.during && `had.${acts.during.event.id}`,
    ]
      .filter(Boolean)
      .join('.');
    for (const side of sidesOfIt) side.holdings = [name];
    drawn.push({ name, holders, ...acts, forAnother: first.forAnother, piece });
  };
  const missing = sides.filter((one) => one.holdings.length === 0 && !one.isUnclear && one.effect !== 'named');
  for (const some of groupBy(missing, holdersOf).values()) {
    const [got, gave] = (['begins', 'ends'] as const).map((effect) => some.filter((one) => one.effect === effect)) as [
      Side[],
      Side[],
    ];
    const [first, last] = [got[0], gave[0]];
    if (got.length === 1 && gave.length === 1 && first && last && !parties.leadsTo(last.act, first.act))
      add([first, last], { got: first.act, gave: last.act, during: null });
    else {
      for (const one of got) add([one], { got: one.act, gave: null, during: null });
      for (const one of gave) add([one], { got: null, gave: one.act, during: null });
    }
  }
  // Who lent it had it then: in a holding that is told already, where there is one; in one of its own, where there is none.
  for (const side of missing.filter((one) => one.effect === 'held then')) {
    const own = drawn.filter(
      (one) => !one.forAnother === !side.forAnother && one.holders.includes((side.lines[0] as ActLine).party),
    );
    if (own.length === 1) side.holdings = own.map((one) => one.name);
    else if (own.length === 0) add([side], { got: null, gave: null, during: side.act });
  }
  return drawn;
}

function holdersOf(side: Side): string {
  return `${side.forAnother} ${[...new Set(side.lines.map((one) => one.party))].sort().join(' ')}`;
}

/** The pairs of holdings that an act ties together; and the ends of those that were with somebody for the act. */
function passagesOf({ act, between }: ActAt, sides: readonly Side[], parties: Parties): readonly Passage[] {
  const mine = sides.filter((one) => one.act === act);
  const [from, to] = (['gives', 'gets'] as const).map((name) => mine.find((one) => one.side === name));
  const how = mine[0]?.how;
  if (how === undefined || mine.some((one) => one.isUnclear)) return [];
  const givers = from?.holdings.length ? from.holdings : [null];
  const getters = to?.holdings.length ? to.holdings : [null];
  const pairs = givers.flatMap((one) => getters.map((other) => ({ act, from: one, to: other, how })));
  const agents = [...between, ...(from?.lines ?? [])].flatMap((line) => {
    const agent = line.agent ?? (line.role === 'gives' || line.role === 'gets' ? null : line.party);
    const own = agent === null || how === 'for a time' ? [] : parties.holdingsOf(agent, true);
    return own.length === 1 ? own.map((one) => ({ act, from: one.id, to: null, how: 'handed on' as const })) : [];
  });
  return [...pairs.filter((one) => one.from !== null || one.to !== null), ...agents];
}
