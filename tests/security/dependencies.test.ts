import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { ROOT } from '../workspace.ts';

interface Locked {
  readonly dev?: boolean;
  readonly devOptional?: boolean;
  readonly license?: string;
  readonly hasInstallScript?: boolean;
  readonly resolved?: string;
  readonly integrity?: string;
}

const locked = Object.entries(
  (JSON.parse(readFileSync(path.join(ROOT, 'package-lock.json'), 'utf8')) as { packages: Record<string, Locked> })
    .packages,
).filter(([name]) => name !== '');
const shipped = locked.filter(([, one]) => !one.dev && !one.devOptional);

/** Licences that let anybody use, change and pass on, by their SPDX names (spdx.org/licenses). */
const PERMISSIVE =
  /^\(?(MIT|MIT-0|ISC|0BSD|BSD-2-Clause|BSD-3-Clause|Apache-2\.0|BlueOak-1\.0\.0|OFL-1\.1|Unlicense|CC0-1\.0|Python-2\.0|Zlib|LGPL-3\.0-or-later|EPL-2\.0|MPL-2\.0|WTFPL)( (AND|OR) [A-Za-z0-9.-]+)*\)?$/;

/** Copyleft of single files or libraries: used unchanged, as packages of their own, which these licences allow. */
const UNCHANGED: Readonly<Record<string, string>> = {
  '@img/sharp-libvips': 'LGPL-3.0-or-later',
  '@img/sharp-win32': 'Apache-2.0 AND LGPL-3.0-or-later',
  '@img/sharp-wasm32': 'Apache-2.0 AND LGPL-3.0-or-later AND MIT',
  '@resvg/resvg-js': 'MPL-2.0',
  elkjs: 'EPL-2.0',
};

/** MIT, told in the form of old packages (`licenses`, or the readme), which lock files do not carry. */
const OLD_FORM = ['node_modules/format', 'node_modules/i'];

it('everything that is shipped has a permissive licence; the few others are named, and used unchanged', () => {
  expect(shipped.length).toBeGreaterThan(100);
  const copyleft = shipped.filter(
    ([, { license }]) => /GPL|EPL|MPL/.test(license ?? '') && !/\bOR\b/.test(license ?? ''),
  );
  const unknown = shipped.filter(
    ([name, { license }]) => !OLD_FORM.includes(name) && !PERMISSIVE.test(license ?? 'none'),
  );
  expect(unknown.map(([name, { license }]) => `${name}: ${license}`)).toEqual([]);
  const stray = copyleft.filter(
    ([name, { license }]) =>
      !Object.entries(UNCHANGED).some(
        ([known, words]) => name.startsWith(`node_modules/${known}`) && words === license,
      ),
  );
  expect(stray.map(([name, { license }]) => `${name}: ${license}`)).toEqual([]);
});

it('every package comes with its checksum, and one alone (of those used for building) runs a script when they are installed', () => {
  const unsure = locked.filter(
    ([, { resolved, integrity }]) =>
      (resolved !== undefined && !resolved.startsWith('https://registry.npmjs.org/')) ||
      !integrity?.startsWith('sha512-'),
  );
  expect(unsure.map(([name]) => name)).toEqual([]);
  expect(locked.filter(([, { hasInstallScript }]) => hasInstallScript).map(([name]) => name)).toEqual([
    'node_modules/esbuild',
  ]);
});

it('versions are pinned exactly', () => {
  const { dependencies, devDependencies } = JSON.parse(readFileSync(path.join(ROOT, 'package.json'), 'utf8')) as Record<
    string,
    Record<string, string>
  >;
  for (const [name, version] of Object.entries({ ...dependencies, ...devDependencies }))
    expect(version, name).toMatch(/^\d+\.\d+\.\d+$/);
});
