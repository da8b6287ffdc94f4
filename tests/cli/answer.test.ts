import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { ROOT } from '../workspace.ts';
import { kerfmark } from './kerfmark.ts';

const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

function demoCopy(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'kerfmark-answer-'));
  folders.push(folder);
  cpSync(path.join(ROOT, 'entries'), path.join(folder, 'entries'), { recursive: true });
  return folder;
}

const DRAFT = 'entries/letters/IN-2024-1.md';

describe('kerfmark answer', () => {
  it('prints the answer, as Markdown or as a tree, and names the inquiries where it is asked for none', async () => {
    const { code, out } = await kerfmark(['answer', 'IN-2024-1'], ROOT);
    expect(code).toBe(0);
    expect(out).toMatch(
      /^# Inquiry of the diocese of Lerakos, 2024\n\n\*Answer to an inquiry\*\n\n> \*\*Draft, not the museum’s answer\*\*\n/,
    );
    expect(out).toContain('- **Asked by:** the diocese of Lerakos');
    const tree = JSON.parse((await kerfmark(['answer', 'IN-2024-1', '--json'], ROOT)).out) as Record<string, unknown>;
    expect([tree.format, tree.id, tree.draft]).toEqual([
      'kerfmark-document/1',
      'IN-2024-1',
      'Draft, not the museum’s answer',
    ]);
    expect((await kerfmark(['answer'], ROOT)).err).toContain('The inquiries are: IN-2021-3, IN-2024-1.');
    expect((await kerfmark(['answer', 'IN-2024-2'], ROOT)).err).toContain('Did you mean IN-2024-1');
  });

  it('a draft is not kept; an approved answer is, once, and the lines that are printed make the file clean', async () => {
    const folder = demoCopy();
    const refused = await kerfmark(['answer', 'IN-2024-1', '--keep'], folder);
    expect([refused.code, refused.err]).toEqual([2, expect.stringContaining('is not approved')]);
    const entry = path.join(folder, DRAFT);
    const written = readFileSync(entry, 'utf8').replace('state: in review\n', 'approved-by: the director\n');
    writeFileSync(entry, written.replace('approved-by', 'state: approved\napproved-by'));
    const kept = await kerfmark(['answer', 'IN-2024-1', '--keep'], folder);
    expect(kept.err).toBe('');
    expect(readFileSync(path.join(folder, 'entries/sent/IN-2024-1.md'), 'utf8')).toBe(
      (await kerfmark(['answer', 'IN-2024-1'], folder)).out,
    );
    const lines = kept.out.slice(kept.out.indexOf('state: sent'));
    writeFileSync(entry, written.replace('approved-by', `${lines}approved-by`));
    const checked = await kerfmark(['check'], folder);
    expect(checked.code).toBe(0);
    expect(checked.out).toMatch(/^no errors, 6 doubts, 1 note\./m);
    expect((await kerfmark(['answer', 'IN-2024-1', '--changes'], folder)).out).toBe(
      'Nothing that entries/sent/IN-2024-1.md rests on is otherwise today.\n',
    );
    expect((await kerfmark(['answer', 'IN-2024-1', '--keep'], folder)).err).toContain('exists already');
  });

  it('tells what has changed since, and that a sent file was touched', async () => {
    const folder = demoCopy();
    const { out } = await kerfmark(['answer', 'IN-2021-3', '--changes'], folder);
    expect(out).toBe(
      'No statement that entries/sent/IN-2021-3.md cites is otherwise today; nothing else of it was kept to compare.\n',
    );
    const event = path.join(folder, 'entries/events/EV-exhibition-1936.md');
    writeFileSync(event, readFileSync(event, 'utf8').replace('1936-10', '1936-09'));
    const changed = await kerfmark(['answer', 'IN-2021-3', '--changes'], folder);
    expect(changed.out).toMatch(
      /Statement EV-exhibition-1936#1\n {2}was: “.*1936.*\(established\)\n {2}is: {2}“.*September 1936/,
    );
    const sent = path.join(folder, 'entries/sent/IN-2021-3.md');
    writeFileSync(sent, readFileSync(sent, 'utf8').replace('1936', '1937'));
    const checked = await kerfmark(['check'], folder);
    expect(checked.code).toBe(1);
    expect(checked.out).toContain('[sent-file-changed]');
  });
});
