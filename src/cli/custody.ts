import { sayLegend } from '../custody/write-line.ts';
import type { Chain } from '../findings/chain.ts';
import { findChains } from '../findings/custody-chains.ts';
import { sayCertain, sayGap, sayStretch } from '../findings/custody-words.ts';
import { houseStyle, lineOfChain } from '../findings/provenance-line.ts';
import { titleOf } from '../model/catalogue.ts';
import { compute } from '../pipeline.ts';
import { audienceOf, folderOf, lineStyleOf, type RunCommand } from './commands.ts';
import { loadWorkspace } from './load-workspace.ts';

export const custody: RunCommand = async (options, effects) => {
  const { file, errors } = compute(await loadWorkspace(folderOf(options, effects)), audienceOf(options));
  const style = lineStyleOf(options, houseStyle(file));
  const chains = findChains(file);
  const lines = chains.map((chain) => lineOfChain(file, chain, style));
  if (options.flags.json) {
    const report = {
      format: 'kerfmark-custody/1',
      grade: 'probable',
      chains: chains.map((chain, i) => chainReport(chain, lines[i] ?? '')),
    };
    effects.out(`${JSON.stringify(report, null, 2)}\n`);
  } else {
    const told = chains.map((chain, i) => tell(chain, titleOf(chain.object, file.settings.languages), lines[i] ?? ''));
    effects.out(
      `${[...told, sayLegend(style), 'The order of dates only; it does not say that an act was lawful or unlawful.'].join('\n\n')}\n`,
    );
  }
  return errors.length > 0 ? 1 : 0;
};

function tell(chain: Chain, title: string, line: string): string {
  return [
    `${title}${chain.panels.length > 0 ? `, ${chain.panels.join(' and ')}` : ''}`,
    ...chain.holdings.map(
      (one) =>
        `  ${one.holding.id} (${one.holding.keys.capacity}): ${sayCertain(one)}; possibly ${sayStretch(one.possibly)}`,
    ),
    ...chain.meanwhile.map(
      ({ holding, possibly }) =>
        `  Meanwhile ${holding.id} (${holding.keys.capacity}): possibly ${sayStretch(possibly)}`,
    ),
    ...chain.gaps.map(
      (gap) =>
        `  Gap ${gap.before.id} to ${gap.after.id}: ${sayGap(gap)}; searches: ${gap.searches.map((one) => `${one.id}, ${one.keys.outcome}`).join('; ') || 'none recorded'}`,
    ),
    ...chain.disputed.map(([a, b]) => `  Title disputed: ${a.id} and ${b.id}`),
    `  ${line.replaceAll('\n', '\n  ')}`,
  ].join('\n');
}

function chainReport(chain: Chain, line: string): unknown {
  const finite = (day: number): number | null => (Number.isFinite(day) ? day : null);
  return {
    object: chain.object.id,
    panels: chain.panels,
    holdings: chain.holdings.map(({ holding, throughout, possibly }) => ({
      holding: holding.id,
      capacity: holding.keys.capacity,
      throughout,
      possibly: { first: finite(possibly.first), last: finite(possibly.last) },
    })),
    meanwhile: chain.meanwhile.map(({ holding }) => holding.id),
    gaps: chain.gaps.map((gap) => ({
      before: gap.before.id,
      after: gap.after.id,
      leastDays: gap.least,
      mostDays: gap.most,
      passage: gap.passage,
      searches: gap.searches.map((one) => one.id),
      periods: gap.periods.map((one) => one.id),
    })),
    titles: chain.titles.map((one) => one.id),
    disputed: chain.disputed.map((pair) => pair.map((one) => one.id)),
    line,
  };
}
