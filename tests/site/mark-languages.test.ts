import { describe, expect, it } from 'vitest';
import { markLanguages } from '../../site/mark-languages.ts';

describe('words in another script', () => {
  it.each([
    [
      '<p>The wall, ο τοίχος του αγίου, was cut.</p>',
      '<p>The wall, <span lang="el">ο τοίχος του αγίου</span>, was cut.</p>',
    ],
    ['<p>Λέρακος</p>', '<p><span lang="el">Λέρακος</span></p>'],
    ['<p>שלום עולם here</p>', '<p><span lang="he" dir="rtl">שלום עולם</span> here</p>'],
    ['<p>بيت المقدس (1926) below</p>', '<p><span dir="rtl">بيت المقدس</span> (1926) below</p>'],
    // A single letter is a number or a sign; what is marked already stays.
    ['<p>angle α of 3</p>', '<p>angle α of 3</p>'],
    [
      '<p lang="el">Λέρακος <b>τοίχος</b></p><p>τοίχος</p>',
      '<p lang="el">Λέρακος <b>τοίχος</b></p><p><span lang="el">τοίχος</span></p>',
    ],
    [
      '<script type="application/json">{"a":"τοίχος"}</script>',
      '<script type="application/json">{"a":"τοίχος"}</script>',
    ],
    ['<svg><text>τοίχος</text></svg>', '<svg><text>τοίχος</text></svg>'],
    ['<a title="τοίχος > 1" href="x">τοίχος</a>', '<a title="τοίχος > 1" href="x"><span lang="el">τοίχος</span></a>'],
    ['<img alt="x"><p>τοίχος</p>', '<img alt="x"><p><span lang="el">τοίχος</span></p>'],
    ['<p>&amp; plain</p>', '<p>&amp; plain</p>'],
  ])('%s', (html, marked) => {
    expect(markLanguages(html)).toBe(marked);
  });
});
