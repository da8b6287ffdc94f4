import { readNameAndPlace, takeLifeDates } from './line-names.ts';
import type { Acquisition, NamedParty } from './line-types.ts';

/** How a holding was acquired, as its words say, and what is left of them: the holder with place and dates. */
export interface VerbReading {
  readonly acquired: Acquisition | null;
  readonly hedge: 'possibly' | 'probably' | null;
  readonly rest: string;
  readonly through: readonly NamedParty[];
  readonly sharedWith: readonly NamedParty[];
  /** True where the line says how, but not to whom. */
  readonly namesNobody: boolean;
}

const HEDGE = /^\s*(possibly|perhaps|maybe|\?|probably|presumably|likely)\b[,:]?\s*/i;

/** Verbs with the one who gets it after "to". */
const TO: readonly (readonly [RegExp, Acquisition])[] = [
  [/^(?:re)?sold\b/i, 'sale'],
  [/^(?:traded|exchanged|by exchange)\b/i, 'exchange'],
  [/^consigned\b/i, 'consignment'],
  [/^(?:sent|shipped)\b/i, 'sent'],
  [/^(?:lent|loaned|on loan)\b/i, 'loan'],
  [/^(?:deposited|on deposit|entrusted)\b/i, 'deposit'],
  [/^(?:transferred|by transfer|transfer)\b/i, 'transfer'],
  [/^(?:restituted|returned|by restitution)\b/i, 'restitution'],
  [
    /^(?:(?:his|her|their|its|the|a|partial|promised|anonymous|by)\s+)*(?:gifts?|donation)\b|^(?:given|donated|presented)\b/i,
    'gift',
  ],
  [/^(?:(?:his|her|their|its|the|a|by)\s+)*bequest\b|^(?:bequeathed|willed)\b/i, 'bequest'],
  [/^(?:by )?(?:descent|decent)\b|^descended\b/i, 'descent'],
  [/^(?:by )?inheritance\b/i, 'inheritance'],
];

/** Verbs with the one who gets it after "by". */
const BY: readonly (readonly [RegExp, Acquisition])[] = [
  [/^(?:purchased|bought|by purchase)\b/i, 'purchase'],
  [/^(?:acquired|obtained|collected)\b/i, 'acquired'],
  [/^commissioned\b/i, 'commission'],
  [
    /^(?:confiscated|spoliated|seized|looted|requisitioned|sequestered|sequestrated|nationalised|nationalized)\b/i,
    'confiscation',
  ],
  [/^(?:recovered|reclaimed)\b/i, 'restitution'],
  [/^inherited\b/i, 'inheritance'],
];

/** Reads the words of transfer at the head of a stretch, agents and sharers anywhere in it. */
export function readVerbs(stretch: string): VerbReading {
  let text = stretch.trim();
  let hedge: VerbReading['hedge'] = null;
  const doubt = HEDGE.exec(text);
  if (doubt) {
    hedge = /possibly|perhaps|maybe|\?/i.test(doubt[1] as string) ? 'possibly' : 'probably';
    text = text.slice(doubt[0].length);
  }
  const through: NamedParty[] = [];
  const sharedWith: NamedParty[] = [];
  text = takeParty(
    text,
    /,?\s*\b(?:(?:on|in) joint account(?:\s+\d{4})?|jointly) with\s+(?:\(([^()]*(?:\([^()]*\)[^()]*)*)\)|(\p{Lu}[^;]*)$)/u,
    (party, whole) => {
      if (whole.trim() === text.trim()) return false;
      sharedWith.push(party);
      return true;
    },
  );
  text = takeParty(
    text,
    /,?\s*\b(?:through|via)\s+(?:\(([^()]*(?:\([^()]*\)[^()]*)*)\)|((?!the \d)(?:\p{Lu}|the \p{Lu})[^;]*?)(?=\s+to\s+|\s*$|,?\s+(?:in\s+)?(?:\p{Lu}\p{Ll}+ )?(?:\d{1,2},? )?\d{4}\s*$))/u,
    (party) => {
      through.push(party);
      return true;
    },
  );
  text = text.replace(/,?\s*\bthrough the \d[^,;]*/i, '');
  const joint = /^on joint account\b(.*?)\bwith\s+(.*)$/is.exec(text);
  if (joint)
    return {
      acquired: 'joint account',
      hedge,
      rest: `${joint[2]} ${joint[1]}`,
      through,
      sharedWith,
      namesNobody: false,
    };
  const done = (acquired: Acquisition | null, rest: string, namesNobody = false): VerbReading => ({
    acquired,
    // "likely by descent": the doubt is about the way, not about the holder.
    hedge: acquired === 'descent' || acquired === 'inheritance' ? null : hedge,
    rest,
    through,
    sharedWith,
    namesNobody,
  });
  const soldAt = /^sold (?:at|by)\s+(?!.*\sto\s)(.*)$/is.exec(text);
  if (soldAt) return done(null, soldAt[1] as string);
  const credit = /^museum purchase\b:?/i.exec(text);
  if (credit) return done('purchase', `Museum${datesOf(text)}`);
  for (const [pattern, acquired] of TO) {
    const verb = pattern.exec(text);
    if (!verb) continue;
    const after = text.slice(verb[0].length);
    const to = /^(.*?)(?:^|\s|,)to\s+(?!at least|\d)(.*)$/is.exec(outsideBrackets(after, /\bto\s+/i) ? after : '');
    if (to) return done(acquired, `${to[2]}${datesOf(to[1] ?? '')}`);
    if (acquired === 'descent' || acquired === 'inheritance')
      return done(acquired, after.replace(/^\s*(?:,|in the family|within the family)\s*/i, ''));
    const by = /^(.*?)\bby\s+(.*)$/is.exec(after);
    if (by && acquired === 'sale') return done('sale', '', true);
    return done(acquired, after.replace(/^\s*(?:of|from|,)\s*/i, ''), !/\p{Lu}/u.test(after));
  }
  for (const [pattern, acquired] of BY) {
    const verb = pattern.exec(text);
    if (!verb) continue;
    const after = text.slice(verb[0].length);
    const forWhom = /^\s*(?:there\s+)?by\s+\(([^()]*)\),?\s+(?:(probably|possibly)\s+)?for\s+(.*)$/is.exec(after);
    if (forWhom) {
      through.push(readNameAndPlace(forWhom[1] as string));
      const doubtful = forWhom[2]?.toLowerCase() as VerbReading['hedge'] | undefined;
      return { ...done(acquired, forWhom[3] as string), hedge: doubtful ?? hedge };
    }
    const by = /^(.*?)\b(?:by|for)\s+(?!\d)(?=\p{Lu}|the\b|a\b|his\b|her\b|\(|an\b|museum)(.*)$/isu.exec(after);
    if (by)
      return done(
        acquired,
        `${(by[2] as string).replace(/\s+from\s+(?:\(.*\)|.*)$/is, (from) => datesOf(from))}${datesOf(by[1] ?? '')}`,
      );
    const from = /^(.*?)\bfrom\s+(.*)$/is.exec(after);
    const named = /^[\s,]*(?:the )?[\p{Lu}(]/u.test(after);
    return done(acquired, from || !named ? datesOf(after) : after, from !== null || !named);
  }
  return done(null, text.replace(/^(?:from|in|with)\s+(?=the\b|\p{Lu})/iu, ''));
}

/** The dates of a stretch that is otherwise left out, so that they are not lost: ", 1909". */
function datesOf(text: string): string {
  const { rest } = takeLifeDates(text.replace(/\([^()]*\)/g, ' '));
  const between = /\bbetween \d{4} and \d{4}/i.exec(rest);
  if (between) return `, ${between[0]}`;
  const found =
    /(?:(?:probably|possibly|in|on|by|before|after|ca?\.|about|during|until)\s+)*(?:the\s+)?(?:\d{1,2} )?(?:\p{L}+ )?(?:\d{1,2}, )?\d{4}\b|(?:during|after|before) (?:the war|world war \w+|wwii)/iu.exec(
      rest,
    );
  return found ? `, ${found[0]}` : '';
}

function outsideBrackets(text: string, pattern: RegExp): boolean {
  let depth = 0;
  let plain = '';
  for (const one of text) {
    if (one === '(' || one === '[') depth += 1;
    plain += depth === 0 ? one : ' ';
    if (one === ')' || one === ']') depth = Math.max(0, depth - 1);
  }
  return pattern.test(plain);
}

function takeParty(text: string, pattern: RegExp, take: (party: NamedParty, whole: string) => boolean): string {
  const found = pattern.exec(text);
  if (!found) return text;
  const words = (found[1] ?? found[2] ?? '').trim();
  const { holder, place } = readNameAndPlace(words);
  if (holder === '' || !take({ holder, place }, found[0])) return text;
  return text.slice(0, found.index) + text.slice(found.index + found[0].length);
}
