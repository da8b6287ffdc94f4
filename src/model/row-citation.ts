import { phrase, type Said } from '../base/said.ts';

/** What a row of a reference table says of where it is from. */
export interface SourcedRow {
  /** Parts parted by semicolons: published sources, and working notes of who made the table. */
  readonly source: string;
  /** `looked-up`, `partly looked-up`, `memory`. */
  readonly standing: string;
  /** `high`, `medium`, `doubtful`. */
  readonly howSure: string;
}

/** Words of a working note: how and where it was looked up, which is no citation. */
const NOTE =
  /\b(?:memory|pages?|sites?|wiki\w*|encyclop\w+|stored|cop(?:y|ies)|surveys?|summar\w+|lists?|several|checked|threads?|histor(?:y|ies)|transllegisl|docplayer|openedition|webexhibits|plasticsnews|glossar(?:y|ies)|timelines?|blogs?|scribd|open|online|translat\w+|transcribed|excerpts?|notes?|seen|met|not (?:found|read|reached))\b|\.[a-z]{2,5}(?=$|[\s/),;])/i;

/** What a published source is known by: a year, a standard, a collection of laws, a reference work. */
const PUBLISHED =
  /\b(?:1[5-9]|20)\d\d\b|\b(?:EN|ISO|CTE|CFR|FR|NPS|JAIC|CAMEO|EwaGlos|Artists' Pigments|Hansard|Statutes|Directive|Regulation|Annex)\b/;

/**
 * What is cited for a row: its published sources alone, "not verified" where it has none, was written from memory or is
 * doubtful. A working note never reaches a reader, and nothing is cited from memory.
 * @example citationOf({ source: 'EwaGlos 2015; day from memory', standing: 'looked-up', howSure: 'high' }) // EwaGlos 2015
 */
export function citationOf({ source, standing, howSure }: SourcedRow): Said {
  if (standing === 'memory' || howSure === 'doubtful') return phrase('not verified');
  const published = source
    .split(/;\s*/)
    .filter((part) => PUBLISHED.test(part) && !NOTE.test(part))
    .join('; ');
  if (published === '') return phrase('not verified');
  return standing === 'looked-up' ? published : phrase('{0}; verified in part', published);
}
