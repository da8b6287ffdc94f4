import { seededRandom } from '../../src/geometry/seeded-random.ts';

/** What people, editors and damaged disks put into texts. */
const ODD = [
  '\t',
  '\u00a0',
  '\ufeff',
  '\0',
  '\r',
  '\n\n',
  '"',
  "'",
  '“',
  '”',
  '{',
  '}',
  '[',
  ']',
  ':',
  ': ',
  ';',
  ',',
  '#',
  ' #',
  '&x',
  '*x',
  '|',
  '>',
  '- ',
  '---\n',
  '...\n',
  '%',
  '@',
  '`',
  '\\',
  '!!js',
  '<<: *x',
  '__proto__: 1\n',
  'constructor: x\n',
  '\ud83d\udca5',
  '\u202e',
  'null',
  '~',
  '1e999',
  '-0',
  '0x1f',
  '1_000',
  '..',
  '/..',
  '[..]',
  '1931-13-45',
  '<script>',
  '](',
  '[^1]',
  '| a |',
  '\uffff',
  '9'.repeat(400),
  'x'.repeat(3000),
];

/**
 * A text with a few slips in it: letters gone, doubled or exchanged, lines moved or written twice, odd signs put in, the
 * end cut off. The same seed gives the same slips.
 */
export function mutate(text: string, seed: number): string {
  const random = seededRandom(seed);
  const at = (length: number): number => Math.floor(random() * length);
  let left = text;
  for (let i = 1 + at(4); i > 0; i -= 1) {
    const place = at(left.length + 1);
    const span = 1 + at(random() < 0.2 ? 80 : 6);
    const lines = left.split('\n');
    const line = at(lines.length);
    switch (at(9)) {
      case 0:
        left = left.slice(0, place) + left.slice(place + span);
        break;
      case 1:
        left = left.slice(0, place) + (ODD[at(ODD.length)] ?? '') + left.slice(place);
        break;
      case 2:
        left = left.slice(0, place) + left.slice(place, place + span) + left.slice(place);
        break;
      case 3:
        lines.splice(line, 1);
        left = lines.join('\n');
        break;
      case 4:
        lines.splice(at(lines.length), 0, lines[line] ?? '');
        left = lines.join('\n');
        break;
      case 5:
        lines[line] = `${' '.repeat(at(6))}${(lines[line] ?? '').trimStart()}`;
        left = lines.join('\n');
        break;
      case 6:
        left = left.slice(0, place) + String.fromCharCode(at(0x3000)) + left.slice(place + 1);
        break;
      case 7:
        left = left.replace(/\d+/g, (number) => (random() < 0.2 ? String(at(4000) - 500) : number));
        break;
      default:
        if (random() < 0.3) left = left.slice(0, place);
        else left = left.replace(/: /g, (colon) => (random() < 0.1 ? ':' : colon));
    }
  }
  return left;
}
