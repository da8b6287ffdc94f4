import type { Grade } from '../base/grade.ts';
import { oncePer } from '../base/once.ts';
import { longestDays, parseDuration } from '../dates/duration.ts';
import type { DateSettings } from '../dates/expression.ts';
import type { Entry, Keys } from './entry.ts';

/** What the workspace entry settles, with the values that hold where it says nothing. */
export interface Settings {
  readonly dates: DateSettings;
  /** Days by which papers may follow a passage. */
  readonly paperworkLagDays: number;
  readonly printedGrade: Grade;
  readonly languages: readonly string[];
}

/** Settings of a workspace; defaults where there is no workspace entry yet. */
export function settingsOf(workspace: Entry<'workspace'> | null): Settings {
  return settledBy(workspace?.keys ?? NO_KEYS);
}

const NO_KEYS: Partial<Keys<'workspace'>> = {};

/** The same keys give the same settings, not only equal ones: what is computed from them is kept by them. */
const settledBy = oncePer((keys: Partial<Keys<'workspace'>>): Settings => {
  const lag = parseDuration(keys['paperwork-lag'] ?? 'P0D');
  return {
    dates: { circa: keys.circa ?? {}, sunsetDays: keys['sunset-days'] ?? 1 },
    paperworkLagDays: lag ? longestDays(lag) : 0,
    printedGrade: keys['printed-grade'] ?? 'probable',
    languages: keys.languages ?? ['en'],
  };
});
