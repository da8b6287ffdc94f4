import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { sitePages } from '../../site/pages.tsx';
import { loadWorkspace } from '../../src/cli/load-workspace.ts';
import { Session } from '../../src/cli/session.ts';
import { flatDataOf, withLayers } from '../../src/cli/write-site.ts';
import { seededRandom } from '../../src/geometry/seeded-random.ts';
import { compute } from '../../src/pipeline.ts';
import { madeWorkspace, writeWorkspace } from '../bench/made-workspace.mjs';
import { freshFolder, testFolder } from '../folders.ts';
import { LANGUAGES } from '../spoken.ts';

const home = testFolder();
const NO_PICTURES = { pictures: new Map(), scales: new Map(), plans: new Map(), tiles: new Map() };

/** One hash of every page, every problem and every date of a workspace, as a preview with this session would give them. */
async function made(folder: string, session: Session): Promise<string> {
  const computed = compute(await loadWorkspace(folder, session), 'internal', { languages: LANGUAGES, session });
  const flat = await flatDataOf({ computed, folder, built: '2024-06-01', session }, NO_PICTURES);
  const data = await withLayers(flat, session, () => true);
  const hash = createHash('sha256').update(JSON.stringify(computed.problems));
  for (const page of sitePages(data)) hash.update(`${page.path}\n${page.render()}\n`);
  return hash.digest('hex');
}

type Edit = (folder: string) => void;

/** Edits as somebody makes them who writes: texts, dates, titles, grades, access, entries that go and come back. */
function randomEdits(folder: string, seed: number, count: number): readonly Edit[] {
  const random = seededRandom(seed);
  const pick = <One>(list: readonly One[]): One => list[Math.floor(random() * list.length)] as One;
  const files = readdirSync(path.join(folder, 'entries'), { recursive: true, encoding: 'utf8' })
    .filter((one) => one.endsWith('.md') && one !== 'workspace.md')
    .sort();
  const taken = new Map<string, string>();
  const changes: readonly ((text: string) => string)[] = [
    (text) => `${text}\nOne sentence more.\n`,
    (text) => text.replace(/date: "(\d{3})\d/, 'date: "$15'),
    (text) => text.replace(/\ntitle: .*/, `\ntitle: Another title ${Math.floor(random() * 100)}`),
    (text) => text.replace('grade: probable', 'grade: possible'),
    (text) => text.replace('\ntype:', '\naccess: restricted\ntype:'),
    (text) => text.replace('\ntype:', '\n# a line more\ntype:'),
    (text) => text.replace('\ntitle:', '\ntitel:'),
  ];
  return Array.from({ length: count }, () => {
    const name = pick(files);
    const change = random() < 0.15 ? null : pick(changes);
    return (where) => {
      const file = path.join(where, 'entries', name);
      if (existsSync(file) && change === null) {
        taken.set(name, readFileSync(file, 'utf8'));
        rmSync(file);
      } else if (existsSync(file)) {
        const text = readFileSync(file, 'utf8');
        const changed = (change ?? String)(text);
        writeFileSync(file, changed === text ? `${text}\nNothing else to change.\n` : changed);
      } else writeFileSync(file, taken.get(name) ?? '');
    };
  });
}

async function workspace(entries: number): Promise<string> {
  const folder = freshFolder(home);
  await writeWorkspace(folder, madeWorkspace(entries));
  return folder;
}

it('two sessions beside each other, edits in turn, give the bytes that each gives alone, and that no session gives', async () => {
  const COUNT = 8;
  const sizes = [28, 30];
  const folders = await Promise.all(sizes.map(workspace));
  const sessions = folders.map(() => new Session());
  const edits = folders.map((folder, i) => randomEdits(folder, 11 + i, COUNT));
  const beside: string[][] = [[], []];
  const fresh: string[][] = [[], []];
  const turn = seededRandom(5);
  const left = [0, 0];
  while (left[0] !== COUNT || left[1] !== COUNT) {
    const i = left[0] === COUNT ? 1 : left[1] === COUNT ? 0 : Math.floor(turn() * 2);
    edits[i]?.[left[i] as number]?.(folders[i] as string);
    left[i] = (left[i] as number) + 1;
    beside[i]?.push(await made(folders[i] as string, sessions[i] as Session));
    fresh[i]?.push(await made(folders[i] as string, new Session()));
  }
  for (const [i, size] of sizes.entries()) {
    const alone = await workspace(size);
    const session = new Session();
    const told: string[] = [];
    for (const edit of randomEdits(alone, 11 + i, COUNT)) {
      edit(alone);
      told.push(await made(alone, session));
    }
    expect(beside[i]).toEqual(told);
    expect(beside[i]).toEqual(fresh[i]);
    // The edits did change something.
    expect(new Set(told).size).toBeGreaterThan(COUNT / 2);
  }
});
