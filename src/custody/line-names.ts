import type { NamedParty } from './line-types.ts';

/** A name parted from its place. */
export interface NameAndPlace extends NamedParty {
  readonly lifeDates: string | null;
}

/** Words by which a part after a comma belongs to a name: a title, a firm's form, a house within a house. */
const OF_NAME =
  /^(?:inc|ltd|llc|jr|sr|esq|bt|bart|m\.?p|q\.? ?c|ph\.? ?d|m\.? ?d|s\.?a|gmbh|i{2,3}|iv|v)\b\.?|^(?:\d+(?:st|nd|rd|th)|first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth) (?:earl|duke|marquess|marquis|baron|viscount|count|lord)\b|^(?:earl|duke|duchess|marquess|marquis|marchioness|baron|baroness|viscount|viscountess|count|countess|lord|lady|prince|princess|king|queen)\b|^(?:subsequently|later|afterwards|née|nee|born|formerly)\b|\b(?:institute|institution|museum|galler(?:y|ies)|collection|foundation|trust|society|library|university|college|department|academy|association|kunsthandel|kunsthaus)\b| & |^&|^in\.\d/i;

/** A relation to somebody, said beside a name: never part of it. */
const KIN =
  '(?:great-|step|half-)*(?:grand)?(?:wife|husband|widow|widower|son|daughter|nephew|niece|brother|sister|mother|father|cousin|aunt|uncle|son-in-law|daughter-in-law|brother-in-law|sister-in-law|mother-in-law|father-in-law|partner|friend|heirs?|descendants?|children|parents?|family)';
const WHOSE = "(?:his|her|their|the (?:artist|sitter|painter|former|latter)[’']s|the artist)";
const RANK = '(?:(?:third|second|first|fourth|eldest|elder|younger|youngest|late|former|only|grand) )?';
const RELATION_PART = new RegExp(`^(?:${WHOSE} ${RANK}(?:${KIN})\\b|(?:${KIN}) of\\b)`, 'i');
const RELATION_BEFORE = new RegExp(`^${WHOSE} ${RANK}(?:${KIN}),?\\s+(?=\\p{Lu})`, 'u');
const RELATION_BEFORE_LOWER = new RegExp(`^(?:His|Her|Their) ${RANK}(?:${KIN}),?\\s+(?=\\p{Lu})`, 'u');

/** Takes life dates and the like in brackets out of a stretch; returns them in their order. */
export function takeLifeDates(text: string): { readonly rest: string; readonly lifeDates: string | null } {
  const found: string[] = [];
  const add = (words: string): string => {
    found.push(
      words
        .trim()
        .replace(/,? (?:later|now|formerly|then)\b.*$/i, '')
        .replace(/,? (?=Mrs?\.).*$/, ''),
    );
    return '';
  };
  const rest = text
    .replace(/\s?\[([^\][]*?(?:\d{4}|\bb\. |\bd\. )[^\][]*)\]/g, (_, words: string) => add(words))
    .replace(/\s?\(((?:b\.|d\.|born|died)\s?(?:ca?\. ?|about )?\d{4}[^()]*)\)/g, (_, words: string) => add(words))
    .replace(/\s?\(((?:ca?\. ?)?\d{4}\??\s?[-–]\s?(?:ca?\. ?)?(?:\d{4}|\d{2})?\??)\)/g, (_, words: string) =>
      add(words),
    )
    .replace(/\s?\[((?:ca?\. ?)?\d{4}\??\s?[-–]\s?\d{0,4}\??)$/g, (_, words: string) => add(words))
    .replace(/\((\p{Lu}[\p{L} ]+?) (\d{4}\s?[-–]\s?\d{4})\)/gu, (_, place: string, years: string) => {
      add(years);
      return `, ${place}`;
    });
  return { rest, lifeDates: found.length === 0 ? null : found.join('; ') };
}

/** Parts a stretch at its commas outside of brackets. */
export function commaParts(text: string): readonly string[] {
  const parts: string[] = [];
  let depth = 0;
  let part = '';
  for (const one of text) {
    if (one === '(' || one === '[') depth += 1;
    if (one === ')' || one === ']') depth = Math.max(0, depth - 1);
    if (one === ',' && depth === 0) {
      parts.push(part);
      part = '';
    } else part += one;
  }
  parts.push(part);
  return parts
    .map((one) => one.replace(/\s+/g, (blank) => (blank.includes('\n') ? ' ' : blank)).trim())
    .filter((one) => one !== '');
}

/** Parts a name from its place: the first part is the name, with what belongs to it; relations are dropped; the rest is the place. */
export function readNameAndPlace(stretch: string): NameAndPlace {
  const { rest, lifeDates } = takeLifeDates(stretch);
  const plain = rest
    .replace(/\s?\[(?!later|now|formerly)[^\][]*\]/gi, '')
    .replace(/^\s*(?:and|to|in|from|with|of|at)\s+(?=\p{Lu}|the\b|a\b)/iu, '')
    .trim()
    .replace(RELATION_BEFORE, '')
    .replace(RELATION_BEFORE_LOWER, '');
  const [first = '', ...others] = commaParts(plain);
  const name = [first];
  const place: string[] = [];
  for (const part of others) {
    if (RELATION_PART.test(part)) continue;
    if (place.length === 0 && OF_NAME.test(part)) name.push(part);
    else place.push(part);
  }
  if (RELATION_PART.test(first) && name.length === 1 && place.length > 0 && /^\p{Lu}/u.test(place[0] as string))
    name[0] = place.shift() as string;
  return {
    holder: tidy(name.join(', ')),
    place:
      place.length === 0
        ? null
        : tidy(
            place
              .join(', ')
              .replace(
                /[\s,]+(?:on|in|by|until|until sometime|(?:probably |likely )?by (?:descent|inheritance))$/i,
                '',
              ),
          ),
    lifeDates,
  };
}

/** Without blanks and stray marks at the ends; a period stays after an abbreviation only. */
function tidy(text: string): string {
  const plain = text.replace(/\s+([,)])/g, '$1').replace(/^[\s,:]+|[\s,:;]+$/g, '');
  return plain.replace(/(?<=\p{Ll}{4,})\.$/u, '');
}
