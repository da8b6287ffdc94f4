import { allOf, inRow, named, phrase, type Said } from '../base/said.ts';
import { sayLegend } from '../custody/write-line.ts';
import type { Chain } from '../findings/chain.ts';
import { findChains } from '../findings/custody-chains.ts';
import { sayCertain, sayGap, sayPassed, sayStretch } from '../findings/custody-words.ts';
import { houseStyle, lineOfChain } from '../findings/provenance-line.ts';
import { titleOf } from '../model/catalogue.ts';
import { compute } from '../pipeline.ts';
import { audienceOf, folderOf, lineStyleOf, type RunCommand } from './commands.ts';
import { loadWorkspace } from './load-workspace.ts';

export const custody: RunCommand = async (options, effects) => {
  const { file, errors } = compute(await loadWorkspace(folderOf(options, effects)), audienceOf(options), {
    spoken: effects.sayer.language,
  });
  const style = lineStyleOf(options, houseStyle(file));
  const chains = findChains(file);
  const lines = chains.map((chain) => lineOfChain(file, chain, style));
  if (options.flags.json) {
    const report = {
      format: 'kerfmark-custody/2',
      grade: 'probable',
      chains: chains.map((chain, i) => chainReport(chain, lines[i] ?? '')),
    };
    effects.out(inRow([JSON.stringify(report, null, 2), '\n'], ''));
  } else {
    const told: readonly Said[] = chains.map((chain, i) =>
      tell(chain, titleOf(chain.object, file.settings.languages), lines[i] ?? ''),
    );
    effects.out(
      file.sayer.say(
        inRow(
          [
            ...told,
            sayLegend(file.sayer, style),
            phrase('The order of dates only; it does not say that an act was lawful or unlawful.'),
          ]
            .flatMap((one, i) => (i === 0 ? [one] : ['\n\n', one]))
            .concat('\n'),
          '',
        ),
      ),
    );
  }
  return errors.length > 0 ? 1 : 0;
};

function tell(chain: Chain, title: string, line: string): Said {
  return inRow(
    [
      inRow([title, chain.panels.length > 0 ? inRow([', ', allOf(chain.panels)], '') : ''], ''),
      ...chain.holdings.map(
        (one): Said =>
          phrase(
            '  {0} ({1}): {2}; possibly {3}',
            one.holding.id,
            named(one.holding.keys.capacity),
            sayCertain(one),
            sayStretch(one.possibly),
          ),
      ),
      ...chain.meanwhile.map(
        (one): Said =>
          phrase(
            '  Meanwhile {0} ({1}): {2}; possibly {3}',
            one.holding.id,
            named(one.holding.keys.capacity),
            sayCertain(one),
            sayStretch(one.possibly),
          ),
      ),
      ...chain.gaps.map(
        (gap): Said =>
          phrase(
            '  Gap {0} to {1}: {2}; {3}; searches: {4}',
            gap.before.id,
            gap.after.id,
            sayPassed(gap),
            sayGap(gap),
            gap.searches.length > 0
              ? inRow(
                  gap.searches.map((one): Said => inRow([one.id, ', ', named(one.keys.outcome)], '')),
                  '; ',
                )
              : phrase('none recorded'),
          ),
      ),
      ...chain.disputes.map(
        (one): Said =>
          'request' in one
            ? phrase('  Title disputed: the return is asked for, {0}', one.request.id)
            : phrase('  Title disputed: {0}, contested by {1}', one.title.id, one.contestedBy.join(', ')),
      ),
      inRow(['  ', line.replaceAll('\n', '\n  ')], ''),
    ],
    '\n',
  );
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
    disputes: chain.disputes.map((one) =>
      'request' in one ? { request: one.request.id } : { title: one.title.id, contestedBy: one.contestedBy },
    ),
    line,
  };
}
