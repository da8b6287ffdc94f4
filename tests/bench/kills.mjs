import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cp, mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const ROOT = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const PROGRAM = path.join(ROOT, 'dist/main.js');

/** One hash of all files below a folder; null where it is not there. */
async function stateOf(folder) {
  const names = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() => null);
  if (names === null) return null;
  const files = names.filter((one) => one.isFile()).map((one) => path.join(one.parentPath, one.name));
  const hash = createHash('sha256');
  for (const file of files.sort()) hash.update(path.relative(folder, file)).update(await readFile(file));
  return hash.digest('hex');
}

/** Runs a build; kills it after so many milliseconds. Resolves with true where it ended by itself. */
function build(folder, out, killAfter = null) {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [PROGRAM, 'build', '--in', folder, '--out', out], {
      stdio: 'ignore',
      env: { ...process.env, SOURCE_DATE_EPOCH: '1700000000' },
    });
    const timer = killAfter === null ? null : setTimeout(() => child.kill('SIGKILL'), killAfter);
    child.once('exit', (code) => {
      if (timer) clearTimeout(timer);
      resolve(code === 0);
    });
  });
}

/** The demonstration file, and an entry of it that is changed. */
const DEMO = { from: ROOT, entry: 'events/EV-gift.md' };

/**
 * Kills builds of a workspace at random moments, an entry changed before each, and looks whether the folder
 * always holds one of the two sites whole. Where the kill fell between the two renames, the site stands beside its place
 * and the next build puts it back; that is counted apart.
 *
 * @param {number} times
 * @param {{ from: string, entry: string }} [workspace] the folder that holds `entries/`, and a file below that
 * @param {(text: string) => void} [say]
 */
export async function killBuilds(times, workspace = DEMO, say = () => undefined) {
  const home = await mkdtemp(path.join(tmpdir(), 'kerfmark-kills-'));
  try {
    for (const part of ['entries', 'sent'])
      if (await stat(path.join(workspace.from, part)).catch(() => null))
        await cp(path.join(workspace.from, part), path.join(home, part), { recursive: true });
    const entry = path.join(home, 'entries', workspace.entry);
    const original = await readFile(entry, 'utf8');
    const texts = [original, `${original}\nA sentence more.\n`];
    const out = path.join(home, 'site');
    const states = [];
    let longest = 0;
    for (const text of texts) {
      await writeFile(entry, text);
      const begin = performance.now();
      if (!(await build(home, out))) throw new Error('a build that nobody killed failed');
      longest = Math.max(longest, performance.now() - begin);
      states.push(await stateOf(out));
    }
    const told = { killed: 0, finished: 0, whole: 0, aside: 0, broken: 0 };
    for (let i = 0; i < times; i += 1) {
      await writeFile(entry, texts[i % 2]);
      const finished = await build(home, out, Math.random() * longest);
      told[finished ? 'finished' : 'killed'] += 1;
      const state = await stateOf(out);
      if (state !== null && states.includes(state)) told.whole += 1;
      else if (state === null && states.includes(await stateOf(`${out}.previous`))) told.aside += 1;
      else told.broken += 1;
      if ((await readFile(entry, 'utf8')) !== texts[i % 2]) throw new Error('an entry was changed');
      if (i % 20 === 19) say(`${i + 1} of ${times}: ${JSON.stringify(told)}\n`);
    }
    await build(home, out);
    const after = await stateOf(out);
    const beside = (await readdir(home)).sort();
    const left = beside.filter((name) => name.startsWith('site.'));
    return { ...told, recovered: states.includes(after), left, beside };
  } finally {
    await stat(home).then(() => rm(home, { recursive: true, force: true }));
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const times = Number(process.argv[2] ?? 200);
  const told = await killBuilds(times, DEMO, (text) => process.stdout.write(text));
  process.stdout.write(`${times} kills at random moments of a build: ${JSON.stringify(told)}\n`);
}
