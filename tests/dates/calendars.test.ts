import { describe, expect, it } from 'vitest';
import { CALENDARS, type CalendarName } from '../../src/dates/calendars/calendar.ts';
import { calendarOf } from '../../src/dates/calendars/calendars.ts';
import { julianToDay } from '../../src/dates/calendars/julian.ts';
import { civilOf, dayOf, formatIsoDay } from '../../src/dates/day.ts';
import { hullOfExpression } from '../../src/dates/expression.ts';
import { isDateProblem, readDate } from '../../src/dates/read-date.ts';
import { inEnglish } from '../spoken.ts';

const EXACT = { circa: {}, sunsetDays: 0 };
const WIDENED = { circa: {}, sunsetDays: 1 };

function range(text: string, calendar: CalendarName, settings = EXACT): string {
  const result = readDate(text, calendar, settings);
  if (isDateProblem(result)) throw new Error(inEnglish(result.message));
  const { first, last } = hullOfExpression(result);
  return first === last ? formatIsoDay(first) : `${formatIsoDay(first)} ${formatIsoDay(last)}`;
}

// Reingold and Dershowitz, Calendrical Calculations, sample dates (rows and columns of checks/values.md 2.2).
// R.D., Gregorian, Julian, Hebrew (Nisan = 1), Islamic civil, Ethiopic, Persian, Chinese [cycle, year, month, leap, day].
type Row = readonly [
  number,
  string,
  string,
  string,
  string,
  string,
  string | null,
  readonly [number, number, number, boolean, number],
];
const ROWS: readonly Row[] = [
  [-214193, '-0586-07-24', '-0586-07-30', '3174-05-10', '-1245-12-09', '-0594-12-06', null, [35, 11, 6, false, 12]],
  [25469, '0070-09-24', '0070-09-26', '3831-07-03', '-0568-04-01', '0063-01-29', null, [46, 7, 8, false, 4]],
  [369740, '1013-04-25', '1013-04-19', '4773-02-06', '0403-10-05', '1005-08-24', '0392-02-05', [61, 50, 3, false, 7]],
  [544676, '1492-04-09', '1492-03-31', '5252-01-03', '0897-06-01', '1484-08-05', '0871-01-21', [69, 49, 3, false, 4]],
  [601716, '1648-06-10', '1648-05-31', '5408-03-20', '1058-05-18', '1640-10-06', '1027-03-21', [72, 25, 4, true, 20]],
  [645554, '1768-06-19', '1768-06-08', '5528-04-04', '1182-02-03', '1760-10-14', '1147-03-30', [74, 25, 5, false, 5]],
  [664224, '1819-08-02', '1819-07-21', '5579-05-11', '1234-10-10', '1811-11-27', '1198-05-10', [75, 16, 6, false, 12]],
  [671401, '1839-03-27', '1839-03-15', '5599-01-12', '1255-01-11', '1831-07-19', '1218-01-07', [75, 36, 2, false, 13]],
  [694799, '1903-04-19', '1903-04-06', '5663-01-22', '1321-01-21', '1895-08-11', '1282-01-29', [76, 40, 3, false, 22]],
  [704424, '1929-08-25', '1929-08-12', '5689-05-19', '1348-03-19', '1921-12-19', '1308-06-03', [77, 6, 7, false, 21]],
  [708842, '1941-09-29', '1941-09-16', '5702-07-08', '1360-09-08', '1934-01-19', '1320-07-07', [77, 18, 8, false, 9]],
  [709580, '1943-10-07', '1943-09-24', '5704-07-08', '1362-10-07', '1936-01-26', '1322-07-14', [77, 20, 9, false, 9]],
];

describe('sample dates of Calendrical Calculations', () => {
  it.each(ROWS)('R.D. %i', (day, gregorian, julian, hebrew, islamic, ethiopic, persian, chinese) => {
    const iso = formatIsoDay(day);
    const { year, month, day: dayOfMonth } = civilOf(day);
    expect(
      `${year < 0 ? '-' : ''}${String(Math.abs(year)).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(dayOfMonth).padStart(2, '0')}`,
    ).toBe(gregorian);
    expect(range(julian, 'julian')).toBe(iso);
    expect(range(hebrew, 'hebrew')).toBe(iso);
    expect(range(islamic, 'islamic-civil')).toBe(iso);
    expect(range(ethiopic, 'ethiopic')).toBe(iso);
    const [, year4, rest] = /^(-?\d{4})(-.*)$/.exec(ethiopic) as unknown as [string, string, string];
    const coptic = Number(year4) - 276;
    expect(range(`${coptic < 0 ? '-' : ''}${String(Math.abs(coptic)).padStart(4, '0')}${rest}`, 'coptic')).toBe(iso);
    if (persian !== null) expect(range(persian, 'persian')).toBe(iso);
    const [cycle, inCycle, lunarMonth, leap, lunarDay] = chinese;
    const related = 60 * (cycle - 1) + inCycle - 2637;
    const lunar = `${related < 0 ? '-' : ''}${String(Math.abs(related)).padStart(4, '0')}-${String(lunarMonth).padStart(2, '0')}${leap ? 'L' : ''}-${String(lunarDay).padStart(2, '0')}`;
    expect(range(lunar, 'chinese')).toBe(iso);
  });

  it('fixed day 719163 is 1 January 1970', () => {
    expect(dayOf(1970, 1, 1)).toBe(719163);
    expect(formatIsoDay(719163)).toBe('1970-01-01');
  });
});

describe('Julian Days (Meeus, Astronomical Algorithms, ch. 7; from memory, all reproduce)', () => {
  // JD = R.D. + 1721424.5
  it.each([
    [dayOf(2000, 1, 1), 0.5, 2451545.0],
    [dayOf(1987, 6, 19), 0.5, 2446966.0],
    [dayOf(1900, 1, 1), 0, 2415020.5],
    [dayOf(1600, 12, 31), 0, 2305812.5],
    [dayOf(1957, 10, 4), 0.81, 2436116.31],
    [julianToDay(837, 4, 10), 0.3, 2026871.8],
    [julianToDay(333, 1, 27), 0.5, 1842713.0],
    [julianToDay(-122, 1, 1), 0, 1676497.5],
    [julianToDay(-1000, 2, 29), 0, 1355866.5],
    [julianToDay(-1001, 8, 17), 0.9, 1355671.4],
    [julianToDay(-4712, 1, 1), 0.5, 0.0],
  ])('day %i + %f is JD %f', (day, part, jd) => {
    expect(day + 1721424.5 + part).toBeCloseTo(jd, 6);
  });
});

describe('further dates (checks/values.md 2.2; encyclopaedia and printed multi-calendar pages)', () => {
  it.each<readonly [string, CalendarName, string]>([
    ['1582-10-05', 'julian', '1582-10-15'],
    ['1752-09-03', 'julian', '1752-09-14'],
    ['1917-10-25', 'julian', '1917-11-07'],
    ['1918-02-01', 'julian', '1918-02-14'],
    ['1923-02-16', 'julian', '1923-03-01'],
    ['1900-02-29', 'julian', '1900-03-13'],
    ['0001-01-01', 'french-republican', '1792-09-22'],
    ['0002-11-09', 'french-republican', '1794-07-27'],
    ['0004-01-13', 'french-republican', '1795-10-05'],
    ['0008-02-18', 'french-republican', '1799-11-09'],
    ['0014-04-10', 'french-republican', '1805-12-31'],
    ['0027-11-14', 'french-republican', 'refused'],
    ['0003-13-06', 'french-republican', '1795-09-22'],
    ['1256-03-01', 'rumi', '1840-03-13'],
    ['1325-03-31', 'rumi', '1909-04-13'],
    ['1332-02-15', 'rumi', '1917-02-28'],
    ['1333-03-01', 'rumi', '1917-03-01'],
    ['1334-01-01', 'rumi', '1918-01-01'],
    ['1341-12-31', 'rumi', '1925-12-31'],
    ['1327-04-07', 'rumi', '1911-04-20'],
    ['1332-02-16', 'rumi', 'refused'],
    ['0020-10-10', 'roc', '1931-10-10'],
    ['20-10-10', 'roc', '1931-10-10'],
    ['0001-01-01', 'roc', '1912-01-01'],
    ['showa 1-12-25', 'japanese', '1926-12-25'],
    ['taisho 15-12-24', 'japanese', '1926-12-24'],
    ['Taishō 1-07-30', 'japanese', '1912-07-30'],
    ['meiji 6-1-1', 'japanese', '1873-01-01'],
    ['meiji 5-12-2', 'japanese', 'refused'],
    ['taisho 16-1-1', 'japanese', 'refused'],
    ['1900-01-01', 'chinese', '1900-01-31'],
    ['1931-01-01', 'chinese', '1931-02-17'],
    ['1933-05L-01', 'chinese', '1933-06-23'],
    ['5691-07-01', 'hebrew', '1930-09-23'],
    ['1304-01-01', 'persian', '1925-03-21'],
    ['1342-01-01', 'islamic-civil', '1923-08-14'],
    // Thai years before 1941 began on 1 April: January 2482 fell in 1940.
    ['2482-01-15', 'buddhist', '1940-01-15'],
    ['2482-04-01', 'buddhist', '1939-04-01'],
    ['2484-01-01', 'buddhist', '1941-01-01'],
    ['2483-02-01', 'buddhist', 'refused'],
  ])('%s in %s is %s', (text, calendar, expected) => {
    if (expected === 'refused') expect(isDateProblem(readDate(text, calendar, EXACT))).toBe(true);
    else expect(range(text, calendar)).toBe(expected);
  });

  it('years and months of other calendars are stretches of days', () => {
    expect(range('1309', 'persian')).toBe('1930-03-21 1931-03-21');
    expect(range('1325', 'rumi')).toBe('1909-03-14 1910-03-13');
    expect(range('1333', 'rumi')).toBe('1917-03-01 1917-12-31');
    expect(range('showa 1', 'japanese')).toBe('1926-12-25 1926-12-31');
    expect(range('1342', 'islamic-civil')).toBe('1923-08-14 1924-08-01');
    expect(range('1914-02', 'julian')).toBe('1914-02-14 1914-03-13');
  });

  it('days that begin at sunset are widened by a day either side', () => {
    expect(range('1342-01-01', 'islamic-civil', WIDENED)).toBe('1923-08-13 1923-08-15');
    expect(range('5691-07-01', 'hebrew', WIDENED)).toBe('1930-09-22 1930-09-24');
    expect(range('1304-01-01', 'persian', WIDENED)).toBe('1925-03-21');
  });
});

describe('statutes (checks/cases.md)', () => {
  it.each<readonly [string, CalendarName, string]>([
    ['1309-08-12', 'persian', '1930-11-03'],
    ['1311-08-28', 'persian', '1932-11-19'],
    ['1285-11-01', 'islamic-civil', '1869-02-13'],
    ['1301-04-23', 'islamic-civil', '1884-02-21'],
    ['1291-02-20', 'islamic-civil', '1874-04-08'],
    ['1899-07-24', 'julian', '1899-08-05'],
    ['1923-02-15', 'julian', '1923-02-28'],
  ])('%s in %s is %s', (text, calendar, expected) => {
    expect(range(text, calendar)).toBe(expected);
  });
});

it('all fourteen calendars are there, and none gives a day out of order', () => {
  expect(CALENDARS.length).toBe(14);
  for (const name of CALENDARS) {
    const calendar = calendarOf(name);
    const year = {
      julian: 1926,
      gregorian: 1926,
      'islamic-civil': 1345,
      'islamic-umalqura': 1345,
      rumi: 1330,
      hebrew: 5687,
      persian: 1305,
      coptic: 1643,
      ethiopic: 1919,
      chinese: 1926,
      roc: 15,
      japanese: 1926,
      buddhist: 2470,
      'french-republican': 3,
    }[name];
    const days = calendar
      .months(year)
      .flatMap((month) =>
        Array.from({ length: calendar.monthLength(year, month) }, (_, i) => calendar.toDay(year, month, i + 1)),
      );
    expect(days.length).toBeGreaterThan(350);
    expect(
      days.every((day, i) => i === 0 || day === (days[i - 1] as number) + 1),
      name,
    ).toBe(true);
  }
});
