import type { JSX } from 'preact';
import type { CaseFile } from '../../src/findings/case-file.ts';
import type { Band, Step } from '../../src/findings/four-chains.ts';
import { type ChainRow, type ChainsDrawing, layOutChains } from '../../src/publish/chains-drawing.ts';
import { drawnReferences } from '../../src/publish/chronology-rows.ts';
import { said, term, words } from '../say.ts';
import { shorten } from './custody-figure.tsx';

/** What the four chains are called. */
export const BAND_NAMES: Readonly<Record<Band, string>> = {
  state: 'Physical state',
  place: 'Place',
  custody: 'Custody',
  title: 'Title, as asserted',
};

/** Most letters of a reference date's name, and their width. */
const NAME = 40;
const LETTER = 6.1;

/** State, place, custody and title on one axis; each row leads to its entry. */
export function ChainsFigure({
  file,
  steps,
  hrefOf,
}: {
  readonly file: CaseFile;
  readonly steps: readonly Step[];
  hrefOf(entry: string): string;
}): JSX.Element {
  const references = drawnReferences(file);
  const longest = Math.max(0, ...references.map(({ name }) => Math.min(NAME, name.length + 6)));
  const drawing = layOutChains(steps, references, longest > 0 ? 34 + longest * LETTER : 14);
  const { width, left, right } = drawing.ruling.format;
  return (
    <svg
      class="chains"
      viewBox={`0 0 ${width} ${drawing.bottom + 26}`}
      role="group"
      aria-label={words('State, place, custody and title in time; the table below says the same')}
    >
      <Ruling drawing={drawing} />
      {drawing.bands.map((band) => (
        <g>
          <path class="band-rule" d={`M0 ${band.top}H${width}`} />
          <text class="band-name" x={0} y={band.top + 19}>
            {term(BAND_NAMES[band.band])}
          </text>
          {band.rows.map((row) => (
            <a href={hrefOf(row.step.entry)}>
              <title>{said(row.sentence)}</title>
              <rect class="row-hit" x={0} y={row.y - 10} width={width} height={21} />
              <text class="step-name" x={0} y={row.y + 5}>
                {shorten(said(row.label), 46)}
              </text>
              <StepMark row={row} left={left} right={right} />
              <text class="years" x={right + 14} y={row.y + 5}>
                {said(row.years)}
              </text>
            </a>
          ))}
        </g>
      ))}
      <path class="band-rule" d={`M0 ${drawing.bottom}H${width}`} />
    </svg>
  );
}

function Ruling({ drawing }: { readonly drawing: ChainsDrawing }): JSX.Element {
  const { ruling, top, bottom } = drawing;
  return (
    <g aria-hidden="true">
      {ruling.decades.map(({ x, label }) => (
        <g>
          <path class="decade" d={`M${x} ${top}V${bottom}`} />
          <text class="decade-label" x={x} y={bottom + 19} text-anchor="middle">
            {label}
          </text>
        </g>
      ))}
      {ruling.references.map(({ x, label, labelX }) => (
        <g>
          <path class="reference" d={`M${labelX} ${top - 12} L${x} ${top - 3} V${bottom}`} />
          <text class="reference-label" transform={`translate(${labelX + 4.5} ${top - 16}) rotate(-90)`}>
            {shorten(label, NAME)}
          </text>
        </g>
      ))}
    </g>
  );
}

function StepMark({
  row,
  left,
  right,
}: {
  readonly row: ChainRow;
  readonly left: number;
  readonly right: number;
}): JSX.Element {
  const { y, possibly, throughout, outside, step } = row;
  if (outside || !possibly) {
    const before = outside === 'before';
    return (
      <text class="outside" x={before ? left + 6 : right - 6} y={y + 5} text-anchor={before ? 'start' : 'end'}>
        {before ? words('earlier') : words('later')}
      </text>
    );
  }
  const { x1, x2, openLeft, openRight } = possibly;
  const kind = step.band === 'title' ? 'asserted' : 'possibly';
  return (
    <>
      <path class={kind} d={`M${x1} ${y}H${x2}`} />
      {step.is === 'act' ? <path class="ends" d={`M${x1} ${y - 5}V${y + 5}M${x2} ${y - 5}V${y + 5}`} /> : null}
      {throughout ? (
        <path class={step.is === 'act' ? 'under-way' : 'throughout'} d={`M${throughout.x1} ${y}H${throughout.x2}`} />
      ) : null}
      {row.recordedAt === null ? null : <circle class="recorded" cx={row.recordedAt} cy={y} r={4} />}
      {openLeft ? <path class="open" d={`M${x1 + 7} ${y - 4}L${x1} ${y}L${x1 + 7} ${y + 4}`} /> : null}
      {openRight ? <path class="open" d={`M${x2 - 7} ${y - 4}L${x2} ${y}L${x2 - 7} ${y + 4}`} /> : null}
    </>
  );
}
