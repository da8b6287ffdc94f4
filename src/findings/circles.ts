import type { Diagnostic } from '../base/diagnostic.ts';
import { phrase, type Said } from '../base/said.ts';
import type { Catalogue } from '../model/catalogue.ts';
import { type Entry, isOfType, type KeyPath } from '../model/entry.ts';
import { ancestorsOf } from './independence.ts';

/** What goes in a circle and cannot be right: copies of copies, holdings that come from each other. No date is asked for. */
export function findCircles(catalogue: Catalogue): readonly Diagnostic[] {
  return [
    ...catalogue.ofType('source').flatMap((source) => copiesInACircle(catalogue, source)),
    ...catalogue.ofType('holding').flatMap((holding) => holdingsInACircle(catalogue, holding)),
  ];
}

function fault(entry: Entry, path: KeyPath, code: string, message: Said, mend: Said): Diagnostic {
  return { code, severity: 'error', place: entry.placeOf(path), message, mend, entry: entry.id };
}

/** Sources that are said to be copied from each other. */
function copiesInACircle(catalogue: Catalogue, source: Entry<'source'>): readonly Diagnostic[] {
  if (!ancestorsOf(catalogue, source.id).has(source.id)) return [];
  return [
    fault(
      source,
      ['derives-from'],
      'copies-in-a-circle',
      phrase('{0} is said to be copied, through others, from itself', source.id),
      phrase('one of the steps under derives-from must be wrong: a copy is younger than what it copies'),
    ),
  ];
}

/** Holdings of which each is said to come from the next; told once, at the first of the circle. */
function holdingsInACircle(catalogue: Catalogue, holding: Entry<'holding'>): readonly Diagnostic[] {
  const seen: string[] = [holding.id];
  for (let at = holding.keys.from; at !== undefined && !seen.includes(at); ) {
    seen.push(at);
    const before = catalogue.get(at);
    at = before && isOfType(before, 'holding') ? before.keys.from : undefined;
    if (at !== holding.id) continue;
    // Told once, at the first of the circle.
    if (seen.length < 2 || [...seen].sort()[0] !== holding.id) return [];
    return [
      fault(
        holding,
        ['from'],
        'holdings-in-a-circle',
        phrase('the holdings {0} come from each other in a circle', seen.join(', ')),
        phrase('one of the lines "from" must be wrong: it names the holding before'),
      ),
    ];
  }
  return [];
}
