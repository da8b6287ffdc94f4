import { buddhist } from './buddhist.ts';
import type { Calendar, CalendarName } from './calendar.ts';
import { frenchRepublican } from './french-republican.ts';
import { gregorian } from './gregorian.ts';
import { julian } from './julian.ts';
import { rumi } from './rumi.ts';
import { throughTemporal } from './through-temporal.ts';

const byName: Readonly<Record<CalendarName, Calendar>> = {
  gregorian,
  julian,
  'islamic-civil': throughTemporal('islamic-civil', true),
  'islamic-umalqura': throughTemporal('islamic-umalqura', true),
  rumi,
  hebrew: throughTemporal('hebrew', true),
  persian: throughTemporal('persian', false),
  coptic: throughTemporal('coptic', false),
  ethiopic: throughTemporal('ethiopic', false),
  chinese: throughTemporal('chinese', false),
  roc: throughTemporal('roc', false),
  japanese: throughTemporal('japanese', false),
  buddhist,
  'french-republican': frenchRepublican,
};

/** The calendar of a name. */
export function calendarOf(name: CalendarName): Calendar {
  return byName[name];
}
