import { describe, expect, it } from 'vitest';
import { ROOT } from '../workspace.ts';
import { kerfmark } from './kerfmark.ts';

describe('dates and why', () => {
  it('withdrawing one statement changes the range that it holds', async () => {
    const range = async (without: readonly string[]) => {
      const { out } = await kerfmark(
        ['dates', '--json', ...(without.length > 0 ? ['--without', without.join(',')] : [])],
        ROOT,
      );
      const report = JSON.parse(out) as { moments: { entry: string; edge: string; ranges: { earliest: string }[] }[] };
      return report.moments.find((one) => one.entry === 'EV-removal' && one.edge === 'start')?.ranges[1]?.earliest;
    };
    expect(await range([])).toBe('1929-05-01');
    expect(await range(['EV-removal#2'])).toBe('1925-05-16');
  });

  it('why tells the argument in sentences', async () => {
    const { out, code } = await kerfmark(['why', 'EV-removal', '--grade', 'established'], ROOT);
    expect(code).toBe(0);
    expect(out).toContain('16 May 1925');
    expect(out).toMatch(/\[EV-sighting-1925#entry, established\]/);
    expect(out).toContain('Nothing ends before it starts');
  });
});
