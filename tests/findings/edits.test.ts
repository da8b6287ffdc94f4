import { describe, expect, it } from 'vitest';
import { Session } from '../../src/cli/session.ts';
import { datesReport } from '../../src/findings/dates-report.ts';
import { compute } from '../../src/pipeline.ts';
import { parseText } from '../../src/reading/parsed-text.ts';
import type { TextFile } from '../../src/reading/text-file.ts';
import { filesOf, ROOT, workspaceOf } from '../workspace.ts';

/** Computes as a preview does: a text that was parsed before is the same parsed text. */
function preview(files: Readonly<Record<string, string>>, session: Session) {
  const workspace = workspaceOf(files);
  const parsedOf = ({ text }: TextFile): ReturnType<typeof parseText> => {
    const known = session.parsed.get(text) ?? parseText(text);
    session.parsed.set(text, known);
    return known;
  };
  return compute(
    { ...workspace, parsed: new Map(workspace.entries.map((one) => [one.file, parsedOf(one)])) },
    'internal',
    { session },
  );
}

/** All that is said of a file: dates with reasons, contradictions, and every problem with its place. */
function said(computed: ReturnType<typeof compute>): string {
  const { file, problems } = computed;
  const statements = file.statements.all.map(({ id, says, grade, source, why }) => [id, says, grade, source, why]);
  return JSON.stringify([datesReport(file), problems, statements], null, 1);
}

describe('edits of a running preview', () => {
  const demo = filesOf(ROOT);
  const change = (file: string, edit: (text: string) => string) => ({ ...demo, [file]: edit(demo[file] ?? '') });
  const removal = Object.keys(demo).find((file) => file.endsWith('/EV-removal.md')) as string;
  const table = Object.keys(demo).find((file) => file.endsWith('.csv')) as string;
  const drawing = Object.keys(demo).find((file) => file.endsWith('.svg')) as string;
  const { [removal]: _, ...without } = demo;
  const EDITS: Readonly<Record<string, Readonly<Record<string, string>>>> = {
    'a sentence below the keys': change(removal, (text) => `${text}\nOne sentence more.\n`),
    'a date': change('entries/events/EV-transport.md', (text) => text.replace('date: "1933', 'date: "1932')),
    'a line among the keys that moves all below it': change(removal, (text) =>
      text.replace('\ntype:', '\n# a note\ntype:'),
    ),
    'the access of an entry': change(removal, (text) => text.replace('\ntype:', '\naccess: restricted\ntype:')),
    'an entry that is gone': without,
    'an empty line in a table': change(table, (text) => text.replace(/\n/, '\n\n')),
    'a line in a drawing': change(drawing, (text) => text.replace(/ d="M/, ' d="M 1 1 L')),
    'the language shown first': change('entries/workspace.md', (text) =>
      text.replace(/languages: .*/, 'languages: [fr, en]'),
    ),
    'the file as it was': demo,
  };

  it.each(Object.entries(EDITS))('says after %s what a fresh computation says', (name, files) => {
    if (name !== 'the file as it was') expect(files).not.toEqual(demo);
    const session = new Session();
    preview(demo, session);
    expect(said(preview(files, session))).toBe(said(preview(files, new Session())));
  });

  it('takes over all that is computed of times where only a text changed, and nothing where a key did', () => {
    const session = new Session();
    const before = preview(demo, session).file;
    const afterText = preview(EDITS['a sentence below the keys'] ?? {}, session).file;
    const afterDate = preview(EDITS['a date'] ?? {}, session).file;
    expect(afterText.chronology).toBe(before.chronology);
    expect(afterDate.chronology).not.toBe(before.chronology);
  });
});
