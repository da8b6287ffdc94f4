/** A face for a script, in a package of its own. */
export interface FurtherFace {
  readonly family: string;
  readonly fontPackage: string;
}

/** A script that the shipped faces do not cover, and packages that bring a face for it, the best first. */
export interface FurtherScript {
  readonly name: string;
  readonly pattern: RegExp;
  readonly faces: readonly FurtherFace[];
}

/** Scripts beyond Latin, Greek and Cyrillic, each with free faces that npm has; right-to-left ones included. */
const FURTHER: readonly FurtherScript[] = [
  further('Arabic', /\p{Script=Arabic}/u, ['Noto Naskh Arabic']),
  further('Hebrew', /\p{Script=Hebrew}/u, ['Noto Serif Hebrew']),
  further('Chinese', /\p{Script=Han}/u, ['Noto Serif SC', 'ZCOOL XiaoWei']),
  further('Japanese', /\p{Script=Hiragana}|\p{Script=Katakana}/u, ['Noto Serif JP']),
  further('Korean', /\p{Script=Hangul}/u, ['Noto Serif KR']),
  further('Devanagari', /\p{Script=Devanagari}/u, ['Noto Serif Devanagari']),
];

function further(name: string, pattern: RegExp, families: readonly string[]): FurtherScript {
  const faces = families.map((family) => ({
    family,
    fontPackage: `@expo-google-fonts/${family.toLowerCase().replaceAll(' ', '-')}`,
  }));
  return { name, pattern, faces };
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
