import { phrase } from '../base/said.ts';
import type { Link } from '../chronology/chronology.ts';
import { JUDGES } from '../model/audience.ts';
import type { Catalogue } from '../model/catalogue.ts';
import type { FileStatement } from './file-statement.ts';
import type { Moments } from './moments.ts';
import type { Saying } from './saying.ts';

/** Keys without which a dated or related statement says nothing any more. */
const CARRYING = ['date', 'sense', 'calendar', 'says', 'about'];

/**
 * The statements that an audience may see, about the moments that it may see. A statement goes
 * where its entry, its source, or another entry that it speaks of is not shown, and where the key
 * that carries it is withheld. Withheld words (why, source, as-written) are taken out of it.
 */
export function shownStatements(
  statements: readonly FileStatement[],
  from: Moments,
  whole: Catalogue,
  shown: Catalogue,
  to: Moments,
): readonly FileStatement[] {
  if (whole === shown) return statements;
  const indexOf = (moment: number): number | null => {
    if (moment < 0) return moment;
    const known = from.all[moment];
    const id = known ? shown.shownAs(known.entry) : null;
    return known && id !== null ? (to.momentOf(id, known.edge)?.index ?? null) : null;
  };
  return statements.flatMap((statement): readonly FileStatement[] => {
    const id = shown.shownAs(statement.entry);
    const withheld = whole.get(statement.entry)?.keys.withhold ?? [];
    const names = [...CARRYING, ...statement.path.filter((part) => typeof part === 'string')];
    if (id === null || withheld.some((key) => names.includes(key))) return [];
    if (namesHidden(whole, shown, statement, withheld)) return [];
    if (statement.source !== null && shown.shownAs(statement.source) === null) return [];
    const links = moved(statement.links, indexOf);
    const choice = statement.choice?.map((member) => moved(member, indexOf));
    if (links === null || choice?.some((member) => member === null)) return [];
    const shownChoice = choice as readonly (readonly Link[])[] | undefined;
    const { choice: _, ...rest } = statement;
    return [
      {
        // A stand-in keeps its dates and none of the words of its papers.
        ...withoutWithheldWords(rest, id === statement.entry ? withheld : [...withheld, ...WORDS]),
        entry: id,
        id: statement.id.replace(statement.entry, () => id),
        links,
        ...(shownChoice ? { choice: shownChoice } : {}),
      },
    ];
  });
}

/** Keys that may be withheld from a statement while it stays: words about it, not what it says. */
const WORDS: readonly string[] = ['as-written', 'why', 'source'];

/**
 * True where what a statement is written as names an entry that is not shown, or holds a withheld key
 * that carries what it says: the other event, the gap, the material.
 */
function namesHidden(
  whole: Catalogue,
  shown: Catalogue,
  { entry, path }: FileStatement,
  withheld: readonly string[],
): boolean {
  const item = path.reduce<unknown>(
    (at, key) => (at === null || typeof at !== 'object' ? undefined : (at as Record<string | number, unknown>)[key]),
    whole.get(entry)?.keys,
  );
  if (typeof item === 'string') return isHidden(whole, shown, item);
  if (item === null || typeof item !== 'object' || path.length === 0) return false;
  const walk = (value: unknown, key: string): boolean => {
    if (withheld.includes(key) && !WORDS.includes(key)) return true;
    if (typeof value === 'string')
      return !WORDS.includes(key) && !JUDGES.includes(key) && isHidden(whole, shown, value);
    if (value === null || typeof value !== 'object') return false;
    return Object.entries(value).some(([name, part]) => walk(part, name));
  };
  return Object.entries(item).some(([name, part]) => walk(part, name));
}

function isHidden(whole: Catalogue, shown: Catalogue, reference: string): boolean {
  const target = whole.resolve(reference)?.entry.id;
  return target !== undefined && shown.shownAs(target) === null;
}

function moved(links: readonly Link[], indexOf: (moment: number) => number | null): readonly Link[] | null {
  const result: Link[] = [];
  for (const link of links) {
    const [from, to] = [indexOf(link.from), indexOf(link.to)];
    if (from === null || to === null) return null;
    result.push({ ...link, from, to });
  }
  return result;
}

function withoutWithheldWords(statement: FileStatement, withheld: readonly string[]): FileStatement {
  const source = withheld.includes('source');
  return {
    ...statement,
    says: withheld.includes('as-written') ? withoutWords(statement.says) : statement.says,
    why: withheld.includes('why') ? null : statement.why,
    source: source ? null : statement.source,
    gradeNote: source ? '' : statement.gradeNote,
    notUsed: source && statement.notUsed !== null ? phrase('of a reason that is not shown') : statement.notUsed,
  };
}

/** What a statement says, without the words of its document. */
function withoutWords(says: Saying): Saying {
  return says.is === 'dated' ? { ...says, written: null } : says;
}
