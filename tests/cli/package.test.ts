import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ROOT } from '../workspace.ts';

let home: string;

beforeAll(() => {
  home = mkdtempSync(path.join(tmpdir(), 'kerfmark-pack-'));
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

describe('the packed program, installed elsewhere', () => {
  it('builds a workspace outside the package, from a hostile folder, in a path with spaces and brackets', () => {
    const packed = spawnSync('npm', ['pack', '--ignore-scripts', '--pack-destination', home], {
      cwd: ROOT,
      encoding: 'utf8',
    });
    expect(packed.status, packed.stderr).toBe(0);
    const tarball = readdirSync(home).find((name) => name.endsWith('.tgz')) as string;
    const unpacked = spawnSync('tar', ['-xzf', tarball], { cwd: home });
    expect(unpacked.status).toBe(0);
    // As npm would lay it out: the package in node_modules, its dependencies beside it.
    const place = path.join(home, 'a place [with] (brackets)');
    mkdirSync(path.join(place, 'node_modules'), { recursive: true });
    for (const name of readdirSync(path.join(ROOT, 'node_modules'))) {
      if (name.startsWith('.') || name === 'kerfmark') continue;
      symlinkSync(path.join(ROOT, 'node_modules', name), path.join(place, 'node_modules', name));
    }
    cpSync(path.join(home, 'package'), path.join(place, 'node_modules/kerfmark'), { recursive: true });
    expect(readdirSync(path.join(place, 'node_modules/kerfmark/src'))).toEqual(['language']);

    const work = path.join(home, 'my files [old]');
    mkdirSync(work);
    cpSync(path.join(ROOT, 'tests/messages/base/entries'), path.join(work, 'entries'), { recursive: true });
    const hostile = path.join(home, 'hostile');
    mkdirSync(hostile);
    writeFileSync(path.join(hostile, 'eleventy.config.js'), 'throw new Error("a foreign configuration was executed");');
    writeFileSync(path.join(hostile, '.gitignore'), '*\n');
    writeFileSync(path.join(hostile, '.eleventyignore'), '*\n');
    writeFileSync(path.join(hostile, 'stray.md'), '# stray');
    const main = path.join(place, 'node_modules/kerfmark/dist/main.js');
    const built = spawnSync(process.execPath, [main, 'build', '--in', work, '--out', path.join(work, 'the site')], {
      cwd: hostile,
      encoding: 'utf8',
    });
    expect(built.stderr).toBe('');
    expect(built.status).toBe(0);
    expect(built.stdout).toMatch(/^\d{2} pages/);
    const files = readdirSync(path.join(work, 'the site'), { recursive: true, encoding: 'utf8' });
    expect(files).toContain(path.join('entry', 'EV-sighting.html'));
    expect(files).toContain(path.join('assets', 'registers.js'));
    expect(files.filter((name) => name.endsWith('.woff2')).length).toBeGreaterThan(10);
    expect(files.some((name) => name.includes('stray'))).toBe(false);
    expect(readdirSync(hostile).sort()).toEqual(['.eleventyignore', '.gitignore', 'eleventy.config.js', 'stray.md']);
  });

  it('the command answers under its name in the checkout', () => {
    const asked = spawnSync('npx', ['kerfmark', '--help'], { cwd: ROOT, encoding: 'utf8' });
    expect(asked.status).toBe(0);
    expect(asked.stdout).toContain('kerfmark COMMAND');
  });
});
