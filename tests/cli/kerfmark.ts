import { run } from '../../src/cli/run.ts';

/** Runs one command line as if typed in a folder, on a fixed day; questions are printed, and answered as long as answers last. */
export async function kerfmark(line: readonly string[], cwd: string, answers: readonly string[] = []) {
  let [out, err] = ['', ''];
  const left = [...answers];
  const code = await run(line, {
    cwd,
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    today: () => '2024-06-01',
    ask: async (question) => {
      out += question;
      return left.shift() ?? null;
    },
  });
  return { code, out, err };
}
