import { spawn } from 'node:child_process';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { madeWorkspace, writeWorkspace } from './made-workspace.mjs';

// Prints wall times, peak memory and ratios of one run on one machine; decides nothing.
// node tests/bench/scale.mjs [1000 10000]

const ROOT = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const PROGRAM = path.join(ROOT, 'dist/main.js');
const ELEVENTY = path.join(ROOT, 'node_modules/@11ty/eleventy/cmd.cjs');

const home = await mkdtemp(path.join(tmpdir(), 'kerfmark-scale-'));
/** Loaded into every program that is measured: tells its peak of memory when it ends. */
const tell = path.join(home, 'tell.cjs');
await writeFile(
  tell,
  "process.on('exit',()=>process.stderr.write('\\npeak-kb '+process.resourceUsage().maxRSS+'\\n'))",
);

/** Seconds and peak of memory (MB; null for programs that are no Node) of one run. */
function measure(command, args, cwd = home) {
  return new Promise((resolve, reject) => {
    const begin = performance.now();
    const child = spawn(command, args, { cwd, env: { ...process.env, NODE_OPTIONS: `--require ${tell}` } });
    let said = '';
    child.stdout.on('data', () => undefined);
    child.stderr.on('data', (text) => {
      said += text;
    });
    child.once('error', reject);
    child.once('exit', (code) => {
      const seconds = (performance.now() - begin) / 1000;
      const peaks = [...said.matchAll(/peak-kb (\d+)/g)].map(([, kb]) => Number(kb) / 1024);
      if (code !== 0) reject(new Error(`${command} ${args.join(' ')}: exit ${code}\n${said.slice(0, 2000)}`));
      else resolve({ seconds, mb: peaks.length > 0 ? Math.max(...peaks) : null });
    });
  });
}

const node = (args, cwd) => measure(process.execPath, args, cwd);

/** The same bodies for a plain generator of sites: a title, a layout, no checks, no links resolved, nothing computed. */
async function plainSite(folder, files, kind) {
  for (const [name, text] of files) {
    const file = path.join(folder, kind === 'hugo' ? 'content' : '', name.replace('entries/', ''));
    const [, id] = /^id: (.*)$/m.exec(text);
    const [, title] = /^title: (.*)$/m.exec(text);
    const body = text.slice(text.indexOf('\n---\n') + 5);
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(
      file,
      `---\nid: "${id}"\ntitle: "${title}"\n${kind === 'hugo' ? '' : 'layout: base.njk\n'}---\n${body}`,
    );
  }
  const html = (title, content) =>
    `<!doctype html><html lang="en"><head><title>${title}</title></head><body><h1>${title}</h1>${content}</body></html>`;
  if (kind === 'hugo') {
    for (const name of ['single', 'list']) {
      await mkdir(path.join(folder, 'layouts/_default'), { recursive: true });
      await writeFile(path.join(folder, `layouts/_default/${name}.html`), html('{{ .Title }}', '{{ .Content }}'));
    }
    await writeFile(path.join(folder, 'hugo.toml'), 'disableKinds = ["taxonomy", "term", "RSS", "sitemap"]\n');
  } else {
    await mkdir(path.join(folder, '_includes'), { recursive: true });
    // Whatever stands above the folder for temporary files must not decide what kind of script the settings are.
    await writeFile(path.join(folder, 'package.json'), '{ "type": "commonjs" }');
    await writeFile(path.join(folder, '_includes/base.njk'), html('{{ title }}', '{{ content | safe }}'));
    await writeFile(
      path.join(folder, 'eleventy.config.js'),
      'module.exports = () => ({ markdownTemplateEngine: "njk", dir: { input: ".", output: "_site" } });\n',
    );
  }
}

/** One edit in a running preview until the page shows it, the middle of five. */
async function editShown(folder) {
  const child = spawn(process.execPath, [PROGRAM, 'serve', '--in', folder, '--port', '8460']);
  let said = '';
  child.stdout.on('data', (text) => {
    said += text;
  });
  while (!said.includes('The site is shown')) await new Promise((resolve) => setTimeout(resolve, 100));
  const [address] = /http:\/\/127[^\s]*/.exec(said);
  const file = path.join(folder, 'entries/events/d3/EV-3-taken.md');
  const before = await readFile(file, 'utf8');
  const times = [];
  for (let i = 0; i < 5; i += 1) {
    const mark = `Marked ${i} ${Date.now()}`;
    const begin = performance.now();
    await writeFile(file, `${before}\n${mark}\n`);
    for (;;) {
      if ((await (await fetch(`${address}entry/EV-3-taken.html`)).text()).includes(mark)) break;
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
    times.push((performance.now() - begin) / 1000);
    await new Promise((resolve) => setTimeout(resolve, 400));
  }
  await writeFile(file, before);
  child.kill('SIGINT');
  await new Promise((resolve) => child.once('exit', resolve));
  return times.sort((a, b) => a - b)[2];
}

const print = (text) => process.stdout.write(`${text}\n`);
const rows = new Map();
const tellRow = (size, name, { seconds, mb }) => {
  rows.set(`${size} ${name}`, seconds);
  print(
    `${String(size).padStart(6)}  ${name.padEnd(44)} ${seconds.toFixed(2).padStart(8)} s ${mb === null ? '' : `${Math.round(mb)} MB`}`,
  );
};

try {
  const sizes = process.argv.slice(2).map(Number);
  const hasHugo = await measure('hugo', ['version']).then(
    () => true,
    () => false,
  );
  print(`Node ${process.version}; Hugo ${hasHugo ? 'found' : 'not installed, so not measured'}`);
  for (const size of sizes.length > 0 ? sizes : [1000, 10000]) {
    const files = madeWorkspace(size);
    const [ours, plain, hugo] = ['ours', 'plain', 'hugo'].map((name) => path.join(home, `${name}-${size}`));
    await writeWorkspace(ours, files);
    await plainSite(plain, files, 'eleventy');
    tellRow(size, 'plain Eleventy, Nunjucks, markdown-it, cold', await node([ELEVENTY, '--quiet'], plain));
    if (hasHugo) {
      await plainSite(hugo, files, 'hugo');
      tellRow(size, 'Hugo, cold', await measure('hugo', ['--quiet'], hugo));
    }
    const out = path.join(home, `site-${size}`);
    const build = [PROGRAM, 'build', '--in', ours, '--out', out];
    tellRow(size, 'check, cold', await node([PROGRAM, 'check', '--in', ours]));
    await rm(path.join(ours, '.kerfmark'), { recursive: true, force: true });
    tellRow(size, 'build, cold', await node(build));
    tellRow(size, 'build, nothing changed', await node(build));
    const edited = path.join(ours, 'entries/events/d3/EV-3-taken.md');
    await writeFile(edited, `${await readFile(edited, 'utf8')}\nOne sentence more.\n`);
    tellRow(size, 'build, one entry changed', await node(build));
    tellRow(size, 'check, nothing changed', await node([PROGRAM, 'check', '--in', ours]));
    tellRow(size, 'preview: one edit until it is shown', { seconds: await editShown(ours), mb: null });
    const ratio = (name, peer) => (rows.get(`${size} ${name}`) / rows.get(`${size} ${peer}`)).toFixed(2);
    print(
      `        build, cold : plain Eleventy, cold = ${ratio('build, cold', 'plain Eleventy, Nunjucks, markdown-it, cold')}`,
    );
    if (hasHugo)
      print(`        one edit shown : Hugo, cold = ${ratio('preview: one edit until it is shown', 'Hugo, cold')}`);
  }
  const growth = (name) => {
    const [few, many] = sizes.length === 2 ? sizes : [1000, 10000];
    const [a, b] = [rows.get(`${few} ${name}`), rows.get(`${many} ${name}`)];
    if (a && b) print(`growth from ${few} to ${many}, ${name}: ${(b / a).toFixed(1)}`);
  };
  for (const name of [
    'plain Eleventy, Nunjucks, markdown-it, cold',
    'build, cold',
    'check, cold',
    'preview: one edit until it is shown',
  ])
    growth(name);
} finally {
  await rm(home, { recursive: true, force: true });
}
