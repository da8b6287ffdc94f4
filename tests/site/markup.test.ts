import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { HtmlValidate } from 'html-validate';
import { describe, expect, it } from 'vitest';
import { sharedSite } from '../shared-sites.ts';

const site = await sharedSite('internal');

describe('the markup', () => {
  it('is valid HTML on every page, and every link of the site leads somewhere', async () => {
    const files = (await readdir(site, { recursive: true })).filter((file) => file.endsWith('.html'));
    expect(files.length).toBeGreaterThan(150);
    const validator = new HtmlValidate({
      extends: ['html-validate:recommended'],
      rules: {
        'long-title': 'off',
        'no-trailing-whitespace': 'off',
        'void-style': 'off',
        'no-raw-characters': 'off',
        'attribute-boolean-style': 'off',
        'attribute-empty-style': 'off',
        'prefer-native-element': 'off',
        'doctype-style': 'off',
        'no-inline-style': 'error',
        'require-sri': 'off',
        'valid-id': 'off',
        'tel-non-breaking': 'off',
      },
    });
    const problems: string[] = [];
    const ids = new Map<string, Set<string>>();
    const texts = new Map<string, string>();
    for (const file of files) {
      const text = await readFile(path.join(site, file), 'utf8');
      texts.set(file, text);
      ids.set(file, new Set([...text.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id as string)));
    }
    for (const [file, text] of texts) {
      const report = await validator.validateString(text);
      for (const message of report.results[0]?.messages ?? [])
        problems.push(`${file}: ${message.ruleId} ${message.message}`);
      for (const [, href] of text.matchAll(/<a [^>]*href="([^"]*)"/g)) {
        if (/^(https?:|mailto:)/.test(href as string)) continue;
        const [address = '', anchor] = (href as string).split('#');
        // The state of a trial is written after the `#`; it is no place on the page.
        if (address.endsWith('trial.html') && anchor?.includes('=')) continue;
        const target = address === '' ? file : path.posix.normalize(path.posix.join(path.posix.dirname(file), address));
        if (!target.endsWith('.html')) {
          if (!existsSync(path.join(site, target))) problems.push(`${file}: ${href} leads nowhere`);
          continue;
        }
        if (!ids.has(target)) problems.push(`${file}: ${href} leads nowhere`);
        else if (anchor !== undefined && !ids.get(target)?.has(decodeURIComponent(anchor)))
          problems.push(`${file}: ${href} has no such anchor`);
      }
    }
    expect(problems.slice(0, 20)).toEqual([]);
  });
});
