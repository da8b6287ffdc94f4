import { run } from '../../src/cli/run.ts';

/** Runs one command line as if typed in a folder, on a fixed day; nobody answers questions. */
export async function kerfmark(line: readonly string[], cwd: string) {
  let [out, err] = ['', ''];
  const code = await run(line, {
    cwd,
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    today: () => '2024-06-01',
    ask: async () => null,
  });
  return { code, out, err };
}
