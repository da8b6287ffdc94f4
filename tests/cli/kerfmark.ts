import { run } from '../../src/cli/run.ts';
import type { Language } from '../../src/language/language.ts';
import { type Sayer, sayerIn } from '../../src/language/sayer.ts';
import { english, LANGUAGES, SPEECH } from '../spoken.ts';

/** In what the terminal speaks, and which languages the program has; English, and those of the program, where nothing is said. */
interface Spoken {
  readonly sayer?: Sayer;
  readonly languages?: readonly Language[];
}

/** Runs one command line as if typed in a folder, on a fixed day; questions are printed, and answered as long as answers last. */
export async function kerfmark(
  line: readonly string[],
  cwd: string,
  answers: readonly string[] = [],
  { sayer = english, languages = LANGUAGES }: Spoken = {},
) {
  let [out, err] = ['', ''];
  const left = [...answers];
  const code = await run(line, {
    cwd,
    languages,
    sayer,
    out: (text) => {
      out += sayer.say(text);
    },
    err: (text) => {
      err += sayer.say(text);
    },
    today: () => '2024-06-01',
    ask: async (question) => {
      out += sayer.say(question);
      return left.shift() ?? null;
    },
  });
  return { code, out, err };
}

/** Runs one command line where the terminal speaks a language. */
export function kerfmarkIn(language: Language, line: readonly string[], cwd: string, answers: readonly string[] = []) {
  return kerfmark(line, cwd, answers, { sayer: sayerIn(language), languages: [language] });
}

/** Effects of a command in a folder that print nothing, answer nothing and have a fixed day. */
export function silentEffects(cwd: string) {
  return {
    ...SPEECH,
    cwd,
    out: () => undefined,
    err: () => undefined,
    today: () => '2024-06-01',
    ask: async () => null,
  };
}
