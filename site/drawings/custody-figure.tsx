import { ticks } from 'd3-array';
import type { JSX } from 'preact';
import { civilOf, dayOf } from '../../src/dates/day.ts';
import type { Chain, Stretch } from '../../src/findings/chain.ts';
import { sayCertain, sayGap, sayStretch } from '../../src/findings/custody-words.ts';
import { titleOf } from '../../src/model/catalogue.ts';
import type { Entry } from '../../src/model/entry.ts';
import { entryPath } from '../../src/publish/page-paths.ts';
import type { PageContext } from '../context.ts';
import { said, words } from '../say.ts';

const WIDTH = 860;
const LEFT = 270;
const RIGHT = 850;
const ROW = 34;
const TOP = 28;

interface Props {
  readonly page: PageContext;
  readonly chain: Chain;
}

/** Who had it when: held throughout = solid, possible = dashed; between two rows the length of what is not known. */
export function CustodyFigure({ page, chain }: Props): JSX.Element {
  const rows = [...chain.holdings, ...chain.meanwhile];
  const days = rows
    .flatMap(({ throughout, recorded, possibly }) => [
      throughout?.first,
      throughout?.last,
      recorded?.first,
      recorded?.last,
      possibly.first,
      possibly.last,
    ])
    .filter((day): day is number => day !== undefined && Number.isFinite(day));
  const [first, last] =
    days.length === 0 ? [dayOf(1900, 1, 1), dayOf(2000, 1, 1)] : [Math.min(...days), Math.max(...days)];
  const pad = Math.max(365, (last - first) * 0.05);
  const x = (day: number): number =>
    Math.round(
      LEFT +
        ((Math.max(first - pad, Math.min(last + pad, day)) - first + pad) / (last - first + 2 * pad)) * (RIGHT - LEFT),
    );
  const years = ticks(civilOf(first - pad).year, civilOf(last + pad).year, 8).filter(Number.isInteger);
  const bottom = TOP + rows.length * ROW;
  const languages = page.file.settings.languages;
  return (
    <svg
      class="custody"
      viewBox={`0 0 ${WIDTH} ${bottom + 24}`}
      role="group"
      aria-label={words('Holdings in time; the table below says the same')}
    >
      {years.map((year) => (
        <g class="rule">
          <path d={`M${x(dayOf(year, 1, 1))} ${TOP - 8}V${bottom}`} />
          <text x={x(dayOf(year, 1, 1))} y={bottom + 18} text-anchor="middle">
            {year}
          </text>
        </g>
      ))}
      {rows.map((row, i) => {
        const { holding, throughout, recorded, possibly } = row;
        const y = TOP + i * ROW + 10;
        const aside = i >= chain.holdings.length;
        const name = nameOf(holding, languages);
        const shared = (holding.keys['shared-with'] ?? []).length > 0;
        const gap = chain.gaps.find((one) => one.before.id === holding.id);
        return (
          <>
            <a href={page.href(entryPath(holding.id))}>
              <title>
                {words('{0}: held {1}; possibly {2}', name, said(sayCertain(row)), said(sayStretch(possibly)))}
              </title>
              <text class="holding-name" x={aside ? 14 : 0} y={y + 4}>
                {shorten(name, aside ? 36 : 38)}
              </text>
              <path class="possibly" d={`M${x(possibly.first)} ${y}H${x(possibly.last)}`} />
              {throughout ? (
                <path class={shared ? 'throughout shared' : 'throughout'} d={bar(x, throughout, y, shared)} />
              ) : null}
              {recorded ? <Recorded x={x((recorded.first + recorded.last) / 2)} y={y} shared={shared} /> : null}
              {Number.isFinite(possibly.first) ? null : (
                <path class="open" d={`M${LEFT + 7} ${y - 4}L${LEFT} ${y}L${LEFT + 7} ${y + 4}`} />
              )}
              {Number.isFinite(possibly.last) ? null : (
                <path class="open" d={`M${RIGHT - 7} ${y - 4}L${RIGHT} ${y}L${RIGHT - 7} ${y + 4}`} />
              )}
            </a>
            {gap ? (
              <text class="gap-length" x={LEFT + 6} y={y + ROW / 2 + 4}>
                {gap.passedOn?.atDeath
                  ? words('estate: ')
                  : gap.passage === 'direct'
                    ? words('between them ')
                    : words('no record known: ')}
                {said(sayGap(gap))}
              </text>
            ) : null}
          </>
        );
      })}
    </svg>
  );
}

/** A point where it was recorded; a ring around it where it was shared. */
function Recorded({ x, y, shared }: { readonly x: number; readonly y: number; readonly shared: boolean }): JSX.Element {
  return (
    <>
      <circle class="recorded" cx={x} cy={y} r={4} />
      {shared ? <circle class="ring" cx={x} cy={y} r={7} /> : null}
    </>
  );
}

/** One line, or two where it was shared. */
function bar(x: (day: number) => number, { first, last }: Stretch, y: number, shared: boolean): string {
  const [a, b] = [x(first), Math.max(x(first) + 3, x(last))];
  return shared ? `M${a} ${y - 3}H${b}M${a} ${y + 3}H${b}` : `M${a} ${y}H${b}`;
}

/** What stands beside a row: dealers and agents in parentheses, as in a provenance line. */
export function nameOf(holding: Entry<'holding'>, languages: readonly string[]): string {
  if (holding.keys['not-disclosed']) return words('Known, not disclosed');
  const name = titleOf(holding, languages);
  return holding.keys.capacity === 'agent or dealer' || holding.keys.capacity === 'consignee' ? `(${name})` : name;
}

/** A text that fits its place; the whole stands in the title beside it. */
export function shorten(text: string, most: number): string {
  return text.length <= most ? text : `${text.slice(0, most - 1).trimEnd()}…${text.startsWith('(') ? ')' : ''}`;
}
