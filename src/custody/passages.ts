import { oncePer } from '../base/once.ts';
import type { Catalogue } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import { isWithin, namedWhole, smallestPieces } from '../model/pieces.ts';
import { type Act, type ActLine, actOf } from './acts.ts';
import { type ActAt, type Drawn, holdersOfPiece, type Unclear } from './passages-of-piece.ts';

export type { Unclear } from './passages-of-piece.ts';

/** One holding that passes to another by an act; one side alone where the act names no more. */
export interface Passage {
  readonly act: Act;
  readonly from: string | null;
  readonly to: string | null;
  readonly how: How;
}

/** What an act did, once it is known what a return brought back: something taken, something lent, or not known which. */
export type How = 'handed on' | 'at death' | 'for a time' | 'taken back' | 'brought back' | 'returned';

/** What the acts of a file say of who had what. */
export interface Passages {
  readonly passages: readonly Passage[];
  /** Holdings that nobody wrote and an act tells of, each once. */
  readonly drawn: readonly DrawnHolding[];
  /** Acts whose parties have several holdings that may be meant: they bind nothing. */
  readonly unclear: readonly Unclear[];
}

/** A holding that is told by acts alone. */
export interface DrawnHolding extends Omit<Drawn, 'piece'> {
  readonly id: string;
  readonly objects: readonly string[];
}

/**
 * The passages that acts with parties make, and the holdings that are drawn from them: who had each of the smallest pieces,
 * asked piece by piece, and put together again. It rests on what is written alone, never on a computed date.
 */
export const findPassages = oncePer((catalogue: Catalogue): Passages => {
  const acts = catalogue.ofType('event').flatMap((event) => actOf(event) ?? []);
  const passages = new Map<string, Passage>();
  const drawn = new Map<string, { readonly one: Drawn; readonly pieces: string[] }>();
  const unclear = new Map<string, Unclear>();
  for (const piece of piecesOf(catalogue, acts)) {
    const found = holdersOfPiece(
      piece,
      acts.flatMap((act) => actAt(act, piece) ?? []),
      holdingsOf(catalogue, piece),
    );
    for (const one of found.drawn) {
      const known = drawn.get(one.name);
      if (known) known.pieces.push(piece);
      else drawn.set(one.name, { one, pieces: [piece] });
    }
    for (const one of found.passages) passages.set(`${one.act.event.id} ${one.how} ${one.from} ${one.to}`, one);
    for (const one of found.unclear) unclear.set(`${one.act.event.id} ${one.line.index}`, one);
  }
  const idOf = (name: string): string => (isWritten(catalogue.get(name)) ? `${name}.from-act` : name);
  const named = (name: string | null): string | null => (name !== null && drawn.has(name) ? idOf(name) : name);
  return {
    passages: [...passages.values()].map((one) => ({ ...one, from: named(one.from), to: named(one.to) })),
    drawn: [...drawn.values()].map(({ one: { piece: _, ...one }, pieces }) => ({
      ...one,
      id: idOf(one.name),
      objects: namedWhole(catalogue, pieces),
    })),
    unclear: [...unclear.values()],
  };
});

/** The smallest pieces that any act speaks of. */
function piecesOf(catalogue: Catalogue, acts: readonly Act[]): readonly string[] {
  const named = [...new Set(acts.flatMap(({ lines }) => lines.flatMap((line) => line.objects)))];
  const smallest = named.flatMap((one) => {
    const all = smallestPieces(catalogue, one.split('/')[0] as string);
    const within = all.filter((piece) => isWithin(piece, one));
    return within.length > 0 ? within : all.includes(one) ? [one] : [];
  });
  return [...new Set(smallest)];
}

function actAt(act: Act, piece: string): ActAt | null {
  const at = (role: ActLine['role']): readonly ActLine[] =>
    act.lines.filter((line) => line.role === role && line.objects.some((one) => isWithin(piece, one)));
  const [gives, gets] = [at('gives'), at('gets')];
  return gives.length + gets.length === 0 ? null : { act, gives, gets, between: [...at('through'), ...at('house')] };
}

function isWritten(entry: Entry | undefined): boolean {
  return entry !== undefined && entry.drawnFrom === undefined;
}

function holdingsOf(catalogue: Catalogue, piece: string): readonly Entry<'holding'>[] {
  return catalogue
    .onObject('holding', piece.split('/')[0] as string)
    .filter((one) => isWritten(one) && one.keys.objects.some((id) => isWithin(piece, id)));
}
