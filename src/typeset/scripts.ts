/** A script that the shipped faces do not cover, and the package that brings a face for it. */
export interface FurtherScript {
  readonly name: string;
  readonly pattern: RegExp;
  readonly family: string;
  readonly fontPackage: string;
}

/** Scripts beyond Latin, Greek and Cyrillic, each with a free face that npm has; right-to-left ones included. */
const FURTHER: readonly FurtherScript[] = [
  further('Arabic', /\p{Script=Arabic}/u, 'Noto Naskh Arabic', 'noto-naskh-arabic'),
  further('Hebrew', /\p{Script=Hebrew}/u, 'Noto Serif Hebrew', 'noto-serif-hebrew'),
  further('Chinese', /\p{Script=Han}/u, 'Noto Serif SC', 'noto-serif-sc'),
  further('Japanese', /\p{Script=Hiragana}|\p{Script=Katakana}/u, 'Noto Serif JP', 'noto-serif-jp'),
  further('Korean', /\p{Script=Hangul}/u, 'Noto Serif KR', 'noto-serif-kr'),
  further('Devanagari', /\p{Script=Devanagari}/u, 'Noto Serif Devanagari', 'noto-serif-devanagari'),
];

function further(name: string, pattern: RegExp, family: string, file: string): FurtherScript {
  return { name, pattern, family, fontPackage: `@expo-google-fonts/${file}` };
}

/** Letters of any script that neither the shipped faces nor those of the table have. */
const UNKNOWN = /[^\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}\p{Script=Common}\p{Script=Inherited}]/gu;

/** Scripts of a text that need a face of their own, and letters for which the table has none. */
export function scriptsBeyond(text: string): {
  readonly scripts: readonly FurtherScript[];
  readonly unknown: readonly string[];
} {
  const scripts = FURTHER.filter((one) => one.pattern.test(text));
  const letters = [...new Set(text.match(UNKNOWN) ?? [])];
  return { scripts, unknown: letters.filter((one) => !FURTHER.some(({ pattern }) => pattern.test(one))) };
}
