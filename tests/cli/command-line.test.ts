import { describe, expect, it } from 'vitest';
import type { Said } from '../../src/base/said.ts';
import { run } from '../../src/cli/run.ts';
import { freshFolder, testFolder } from '../folders.ts';
import { inEnglish, SPEECH } from '../spoken.ts';
import { ROOT } from '../workspace.ts';
import { kerfmark } from './kerfmark.ts';

const home = testFolder();

describe('faults end with 2 and plain words', () => {
  it.each([
    [['chek'], 'Did you mean "check"?'],
    [['check', '--in', '/nowhere'], 'There is no folder "entries"'],
    [['check', '--colour'], 'Usage: kerfmark check'],
    [['why', 'EV-remval'], 'Did you mean EV-removal'],
    [['why'], 'Which entry?'],
    [['why', 'SO-ledger'], 'has no time of its own'],
    [['dates', '--audience', 'everyone'], 'The audiences are: public, internal, restricted'],
    [['dates', '--without', 'CL-99'], 'There is no statement CL-99'],
    [['new', 'evnt'], 'Did you mean "event"?'],
    [['schema', 'evnt'], 'There is no type "evnt"'],
  ])('%j', async (line, words) => {
    const { code, err } = await kerfmark(line, ROOT);
    expect(code).toBe(2);
    expect(err).toContain(words);
    expect(err).not.toMatch(/\bat .*\.ts:\d+/);
  });

  it('every command has help with examples', async () => {
    const { out } = await kerfmark([], ROOT);
    for (const name of ['begin', 'new', 'check', 'dates', 'why', 'serve', 'build', 'number', 'schema']) {
      expect(out).toContain(name);
      const help = await kerfmark([name, '--help'], ROOT);
      expect(help.out).toContain('Examples:');
      expect(help.code).toBe(0);
    }
  });
});

it('commands are named as they must be typed: with npx where it was used, and with the folder given', async () => {
  const folder = freshFolder(home);
  let out = '';
  const effects = {
    ...SPEECH,
    cwd: folder,
    program: 'npx kerfmark',
    out: (said: Said) => {
      out += inEnglish(said);
    },
    err: (said: Said) => {
      out += inEnglish(said);
    },
    today: () => '2024-06-01',
    ask: async () => null,
  };
  await run(['begin', '--in', 'my files'], effects);
  expect(out).toContain('"npx kerfmark new --in "my files""');
  out = '';
  await run(['new', 'place', '--title', 'A town', '--yes', '--in', 'my files'], effects);
  expect(out).toContain('then type: npx kerfmark check --in "my files"');
  out = '';
  await run(['check', '--json', '--in', 'my files'], effects);
  expect(() => JSON.parse(out)).not.toThrow();
});
