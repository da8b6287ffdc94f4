import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { kerfmark } from '../cli/kerfmark.ts';
import { smallWorkspace, testFolder } from '../folders.ts';

const home = testFolder();

const inquiry = (more: string): string =>
  `---\nid: IN-1\ntype: inquiry\ntitle: An inquiry\nreceived: "2024-05-14"\nobjects: [OB-wall]\nstate: in review\n${more}approved-by: the director\napproved-on: "2024-06-01"\n---\n`;

const ANSWERED = 'questions: [{ text: Since when?, answer: Since 1925, rests-on: [HO-possessor] }]\n';
const REQUEST =
  '---\nid: RQ-1\ntype: request-for-return\ntitle: A request\nfrom: PA-firm\nreceived: "2024-01-01"\nobjects: [OB-wall]\nstate: received\n---\n';

/** A workspace whose entries are internal unless they say otherwise, with an approved answer. */
function workspace(more: string, files: Readonly<Record<string, string>> = {}): string {
  return smallWorkspace(home, { 'inquiry.md': inquiry(more), ...files });
}

const GIVEN = 'answered-from: internal\nwithheld: [{ class: letters, ground: in confidence }]\n';

describe('an answer that somebody has approved', () => {
  it.each([
    [
      'its object is hidden from the asker',
      ANSWERED,
      {},
      'OB-wall is asked about, and is hidden from the one who asks',
    ],
    [
      'a question rests on nothing',
      `${GIVEN}questions: [Since when?]\n`,
      {},
      'question 1 rests on nothing that the one who asks may see',
    ],
    [
      'an answer rests on what is hidden',
      `${GIVEN}questions: [{ text: Since when?, answer: Since 1925, rests-on: [OB-wall, HO-secret] }]\n`,
      {
        'secret.md':
          '---\nid: HO-secret\ntype: holding\ntitle: A holding\nholder: PA-firm\ncapacity: possessor\nobjects: [OB-wall]\naccess: restricted\n---\n',
      },
      '[answer-rests-on-hidden]',
    ],
    [
      'it does not say that something is withheld',
      `answered-from: internal\n${ANSWERED}`,
      { 'secret.md': '---\nid: SO-secret\ntype: source\nkind: letter\ntitle: A letter\naccess: restricted\n---\n' },
      '[withheld-unsaid]',
    ],
    [
      'a hidden request for return is open',
      `${GIVEN}${ANSWERED}`,
      { 'request.md': REQUEST },
      'a request for return of it is open, and hidden from the one who asks',
    ],
    [
      'every event of it is hidden',
      `${GIVEN}${ANSWERED}`,
      {
        'sale.md':
          '---\nid: EV-sale\ntype: event\nkind: sale\ntitle: A sale\nobjects: [OB-wall]\naccess: restricted\n---\n',
      },
      'every event of what is asked about is hidden from the one who asks',
    ],
  ])('is neither kept nor printed as final where %s', async (_, more, files, missing) => {
    const folder = workspace(more, files);
    for (const flags of [['--keep'], ['--format', 'md', '--out', 'out']]) {
      const { code, err } = await kerfmark(['answer', 'IN-1', ...flags], folder);
      expect(code).not.toBe(0);
      expect(err).toContain(missing);
      expect(err).toContain('nothing was written');
      expect(existsSync(path.join(folder, 'entries/sent'))).toBe(false);
      expect(existsSync(path.join(folder, 'out'))).toBe(false);
    }
    // On the terminal and as data it is a draft, so that it can be looked at.
    expect((await kerfmark(['answer', 'IN-1'], folder)).out).toContain('Draft, not the museum’s answer');
    expect(JSON.parse((await kerfmark(['answer', 'IN-1', '--json'], folder)).out).draft).toContain('Draft');
  });

  it('is kept where nothing is missing, and where somebody answers for the doubt that is left', async () => {
    const whole = workspace(`${GIVEN}${ANSWERED}`);
    expect(await kerfmark(['answer', 'IN-1', '--keep'], whole)).toMatchObject({ code: 0, err: '' });
    expect(readFileSync(path.join(whole, 'entries/sent/IN-1.md'), 'utf8')).not.toContain('Draft');

    const secret = '---\nid: SO-secret\ntype: source\nkind: letter\ntitle: A letter\naccess: restricted\n---\n';
    const folder = workspace(`answered-from: internal\n${ANSWERED}`, { 'secret.md': secret });
    const entry = path.join(folder, 'entries/inquiry.md');
    const signed =
      'signed-off: [{ code: withheld-unsaid, by: the director, on: "2024-06-01", why: told on the phone }]\n';
    writeFileSync(entry, readFileSync(entry, 'utf8').replace('state:', `${signed}state:`));
    expect(await kerfmark(['answer', 'IN-1', '--keep'], folder)).toMatchObject({ code: 0, err: '' });
  });

  it('prints as a draft where its object is hidden from the asker, and no signature mends that', async () => {
    const signed = 'signed-off: [{ code: approved-not-ready, by: the director, on: "2024-06-01", why: urgent }]\n';
    const folder = workspace(`${ANSWERED}${signed}`);
    expect((await kerfmark(['answer', 'IN-1'], folder)).out).toContain('Draft, not the museum’s answer');
    expect((await kerfmark(['check'], folder)).out).toContain('approved-not-ready');
    expect((await kerfmark(['answer', 'IN-1', '--keep'], folder)).code).not.toBe(0);
  });
});
