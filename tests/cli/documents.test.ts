import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openPdf, textOfPdf } from '../audiences/read-outputs.ts';
import { entries, ROOT } from '../workspace.ts';
import { kerfmark } from './kerfmark.ts';

const out = mkdtempSync(path.join(tmpdir(), 'kerfmark-documents-'));
afterAll(() => rmSync(out, { recursive: true, force: true }));

const hash = (file: string): string => createHash('sha256').update(readFileSync(file)).digest('hex');

describe('the provenance file as PDF', () => {
  const file = path.join(out, 'OB-lerakos-file.pdf');
  beforeAll(async () => {
    expect(await kerfmark(['file', 'OB-lerakos', '--out', out], ROOT)).toMatchObject({ code: 0, err: '' });
  }, 120_000);

  it('declares PDF/A-3a and is tagged, with language, title and the date given', async () => {
    const bytes = readFileSync(file, 'latin1');
    expect(bytes.startsWith('%PDF-1.7')).toBe(true);
    expect(bytes).toMatch(/pdfaid:part>3</);
    expect(bytes).toMatch(/pdfaid:conformance>A</);
    expect(bytes).toContain('/OutputIntents');
    const pdf = await openPdf(file);
    expect(await pdf.getMarkInfo()).toMatchObject({ Marked: true });
    const { info } = (await pdf.getMetadata()) as unknown as { info: Record<string, string> };
    expect(info.Title).toBe('Three panels from the refectory on Lerakos: Provenance file');
    expect(info.Language).toMatch(/^en/);
    expect(info.CreationDate).toMatch(/^D:20240601/);
    expect(pdf.numPages).toBeGreaterThan(12);
    expect(pdf.numPages).toBeLessThan(40);
  });

  it('holds the case file for machines, the words of the entries, notes, contents and page numbers', async () => {
    const pdf = await openPdf(file);
    const attachments = (await pdf.getAttachments()) as Record<string, { content: Uint8Array }>;
    const [attached] = Object.values(attachments);
    const read = JSON.parse(new TextDecoder().decode(attached?.content)) as { format: string; entries: unknown[] };
    expect(read.format).toBe('kerfmark-case-file/1');
    expect(read.entries.length).toBeGreaterThan(100);
    const text = await textOfPdf(file);
    expect(text.replaceAll(' ', '')).toContain('ΟΑΓΙΟCΟΝΟΥΦΡΙΟC');
    expect(text).toContain('May 1929 – October 1933 (probable)');
    expect(text).toContain(`1 / ${pdf.numPages}`);
    expect(text).toMatch(/Contents .*The object/);
    // First mention in full, later in short.
    expect(text).toContain(
      'Register of arrivals, port of Marseille, no. 2211, 9 November 1933, arrivals 1933/11, Port archive, Marseille',
    );
    expect(text).toContain('Register of arrivals, no. 2211, Port archive');
  });

  it('has headings, tables, notes and described figures in its structure', async () => {
    const pdf = await openPdf(file);
    const roles = new Set<string>();
    const alts: string[] = [];
    const walk = (node: unknown): void => {
      const one = node as { role?: string; alt?: string; children?: unknown[] };
      if (one.role) roles.add(one.role);
      if (one.alt) alts.push(one.alt);
      for (const child of one.children ?? []) walk(child);
    };
    for (let n = 1; n <= pdf.numPages; n += 1) walk(await (await pdf.getPage(n)).getStructTree());
    for (const role of ['H1', 'H2', 'P', 'Table', 'TH', 'TD', 'Note', 'Figure']) expect([...roles]).toContain(role);
    expect(alts.some((one) => one.startsWith('Plan of panel A'))).toBe(true);
    expect(alts.some((one) => one.startsWith('Chronology of'))).toBe(true);
  });

  it('embeds faces out of packages only', () => {
    const names = new Set(
      [...readFileSync(file, 'latin1').matchAll(/\/FontName \/(?:[A-Z]{6}\+)?([A-Za-z0-9-]+)/g)].map(
        ([, name]) => name,
      ),
    );
    expect(names.size).toBeGreaterThan(3);
    expect([...names].filter((name) => !/^Source(?:Serif4|Sans3)-/.test(name ?? ''))).toEqual([]);
  });

  it('is the same bytes twice', async () => {
    const again = path.join(out, 'again');
    await kerfmark(['file', 'OB-lerakos', '--out', again], ROOT);
    expect(hash(path.join(again, 'OB-lerakos-file.pdf'))).toBe(hash(file));
  }, 120_000);
});

describe('other scripts', () => {
  const workspace = (words: string): string => {
    const folder = mkdtempSync(path.join(out, 'scripts-'));
    mkdirSync(path.join(folder, 'entries'));
    const files = entries({ 'OB-a': `type: object\ntitle: A panel\ninscriptions: "${words}"` });
    for (const [name, text] of Object.entries(files)) writeFileSync(path.join(folder, name), text);
    return folder;
  };

  it('an Arabic and a Chinese quotation are set, right-to-left included, where a face is installed', async () => {
    const folder = workspace('reads بيت المقدس and 敦煌 below');
    const made = await kerfmark(['file', 'OB-a', '--format', 'pdf,docx', '--out', folder], folder);
    expect(made.err).toBe('');
    const bytes = readFileSync(path.join(folder, 'OB-a-file.pdf'), 'latin1');
    expect(bytes).toMatch(/NotoNaskhArabic/);
    expect(bytes).toMatch(/ZCOOLXiaoWei/);
    const text = await textOfPdf(path.join(folder, 'OB-a-file.pdf'));
    expect(text).toContain('敦煌');
    // The library gives the letters in the order of the page, ligatures taken apart.
    expect(text.normalize('NFKC').match(/\p{Script=Arabic}/gu)?.length).toBeGreaterThanOrEqual(10);
  }, 120_000);

  it('where none is, the message names the script and the package', async () => {
    const { code, err } = await kerfmark(['file', 'OB-a'], workspace('שלום'));
    expect(code).toBe(2);
    expect(err).toContain('Hebrew text');
    expect(err).toContain('npm install @expo-google-fonts/noto-serif-hebrew');
    expect((await kerfmark(['file', 'OB-a'], workspace('ᚠᚢᚦ'))).err).toContain('No face is known for these letters: ᚠ');
  });
});

describe('the appendix as DOCX', () => {
  const parts = (folder: string): Record<string, string> => {
    const zip = unzipSync(new Uint8Array(readFileSync(path.join(folder, 'OB-lerakos-appendix.docx'))));
    return Object.fromEntries(Object.entries(zip).map(([name, bytes]) => [name, new TextDecoder().decode(bytes)]));
  };
  beforeAll(async () => {
    expect((await kerfmark(['appendix', 'OB-lerakos', '--format', 'docx,md,html', '--out', out], ROOT)).err).toBe('');
  }, 120_000);

  it('has real notes, heads that repeat, captions with numbers, alternative text, language', () => {
    const {
      'word/document.xml': body = '',
      'word/footnotes.xml': notes = '',
      'word/styles.xml': styles = '',
    } = parts(out);
    const marks = body.match(/<w:footnoteReference /g) ?? [];
    expect(marks.length).toBeGreaterThan(10);
    expect((notes.match(/<w:footnote [^>]*w:id="[1-9]\d*"/g) ?? []).length).toBe(marks.length);
    expect((body.match(/<w:tblHeader/g) ?? []).length).toBe((body.match(/<w:tbl>/g) ?? []).length);
    expect(body).toMatch(/SEQ Table[^<]*/);
    expect(body).toMatch(/descr="Plan of panel A, front/);
    expect(styles).toContain('w:lang w:val="en-GB"');
  });

  it('has the parts of a publication appendix (design, site.md)', () => {
    const text = readFileSync(path.join(out, 'OB-lerakos-appendix.md'), 'utf8');
    const heads = [...text.matchAll(/^## (.*)$/gm)].map(([, head]) => head);
    for (const head of [
      'Evidence',
      'Technique',
      'Sections',
      'Plates',
      'Numbers',
      'Chronology',
      'Nil results',
      'Examinations',
      'Figures, credits and rights',
      'Names and transliteration',
      'Glossary',
      'Abbreviations',
      'Conventions',
      'Contributors',
      'What is withheld',
      'Version',
      'Archives and collections',
    ])
      expect(heads).toContain(head);
    expect(text).toContain('| Layer | Function | Colour | Thickness | Binder | Pigments | Method | Sample |');
    const html = readFileSync(path.join(out, 'OB-lerakos-appendix.html'), 'utf8');
    expect(html).not.toMatch(/<script|https?:\/\/(?!www\.w3\.org)/);
    const ids = [...html.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, id] of html.matchAll(/href="#([^"]+)"/g)) expect(ids).toContain(id);
  });

  it('is the same bytes from two fresh processes', () => {
    const main = path.join(ROOT, 'dist/main.js');
    const folders = ['one', 'two'].map((name) => path.join(out, name));
    for (const folder of folders) {
      const made = spawnSync(process.execPath, [main, 'appendix', 'OB-lerakos', '--format', 'docx', '--out', folder], {
        cwd: ROOT,
        env: { ...process.env, SOURCE_DATE_EPOCH: '1717200000', TZ: folder.endsWith('one') ? 'UTC' : 'Asia/Tokyo' },
      });
      expect(made.status, made.stderr.toString()).toBe(0);
    }
    const [one, two] = folders.map((folder) => hash(path.join(folder, 'OB-lerakos-appendix.docx')));
    expect(one).toBe(two);
  }, 120_000);
});

describe('the answer in print', () => {
  it('carries its draft words on every page, and never who asked for others', async () => {
    const made = await kerfmark(
      ['answer', 'IN-2024-1', '--format', 'pdf', '--out', out, '--audience', 'internal'],
      ROOT,
    );
    expect(made.err).toBe('');
    const pdf = await openPdf(path.join(out, 'IN-2024-1.pdf'));
    for (let n = 1; n <= pdf.numPages; n += 1) {
      const { items } = await (await pdf.getPage(n)).getTextContent();
      expect(items.map((one) => ('str' in one ? one.str : '')).join(' ')).toContain('Draft, not the museum’s answer');
    }
    expect(await textOfPdf(path.join(out, 'IN-2024-1.pdf'))).not.toContain('letter of the bishop');
  }, 120_000);
});

describe('export', () => {
  it('packs everything with checksums that hold, and replaces nothing that is not its own', async () => {
    const folder = path.join(out, 'export');
    expect((await kerfmark(['export', '--audience', 'public', '--out', folder], ROOT)).code).toBe(0);
    const manifest = readFileSync(path.join(folder, 'manifest-sha256.txt'), 'utf8').trim().split('\n');
    expect(manifest.length).toBeGreaterThan(60);
    for (const line of manifest) {
      const [sum, name] = line.split('  ') as [string, string];
      expect(hash(path.join(folder, name)), name).toBe(sum);
    }
    const crate = JSON.parse(readFileSync(path.join(folder, 'ro-crate-metadata.json'), 'utf8')) as {
      '@graph': Record<string, unknown>[];
    };
    const byId = new Map(crate['@graph'].map((one) => [one['@id'], one]));
    // RO-Crate 1.1: the descriptor, the root, every file reached from the root.
    expect(byId.get('ro-crate-metadata.json')).toMatchObject({
      about: { '@id': './' },
      conformsTo: { '@id': 'https://w3id.org/ro/crate/1.1' },
    });
    const parts = ((byId.get('./')?.hasPart ?? []) as { '@id': string }[]).map((one) => one['@id']);
    expect(parts.length).toBe(manifest.length);
    for (const part of parts) {
      expect(existsSync(path.join(folder, decodeURI(part)))).toBe(true);
      expect(byId.get(part)?.sha256).toBe(hash(path.join(folder, decodeURI(part))));
    }
    expect((await kerfmark(['export', '--audience', 'public', '--out', folder], ROOT)).code).toBe(0);
    const foreign = path.join(out, 'foreign');
    mkdirSync(foreign);
    writeFileSync(path.join(foreign, 'thesis.txt'), 'mine');
    expect((await kerfmark(['export', '--out', foreign], ROOT)).err).toContain('is left as it is');
    expect(readdirSync(foreign)).toEqual(['thesis.txt']);
  });
});
