import type { CalendarName } from './calendar.ts';

/** How a calendar is called in a sentence. */
export const CALENDAR_WORDS: Readonly<Record<CalendarName, string>> = {
  gregorian: 'Gregorian',
  julian: 'Julian (old style)',
  'islamic-civil': 'Islamic, civil reckoning',
  'islamic-umalqura': 'Islamic, Umm al-Qura',
  rumi: 'Rumi (Ottoman fiscal)',
  hebrew: 'Hebrew',
  persian: 'Persian',
  coptic: 'Coptic',
  ethiopic: 'Ethiopic',
  chinese: 'Chinese',
  roc: 'Republic of China',
  japanese: 'Japanese',
  buddhist: 'Thai Buddhist',
  'french-republican': 'French Republican',
};
