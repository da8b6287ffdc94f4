import type { JSX } from 'preact';
import type { Bar, ChronologyDrawing, Row } from '../../src/publish/chronology-drawing.ts';
import { reasonPath } from '../../src/publish/page-paths.ts';
import type { PageContext } from '../context.ts';

const ROW = 30;
const HEAD = 262;
const FOOT = 34;

/** Height of each grade's mark; each further grade is drawn inside the one before. */
const THICKNESS = { established: 14, probable: 10, possible: 6, conjectural: 0 } as const;

interface Props {
  readonly drawing: ChronologyDrawing;
  readonly page: PageContext;
}

/** The chronology as one SVG: legible in print at A4, in grey, and without scripts. */
export function ChronologyFigure({ drawing, page }: Props): JSX.Element {
  const top = drawing.references.length > 0 ? HEAD : 20;
  const bottom = top + drawing.rows.length * ROW;
  return (
    <svg
      class="chronology"
      viewBox={`0 0 ${drawing.width} ${bottom + FOOT}`}
      role="group"
      aria-label="Chronology: one row an event; the table below says the same"
    >
      <Ruling drawing={drawing} top={top} bottom={bottom} />
      {drawing.rows.map((row, i) => (
        <RowMarks row={row} y={top + i * ROW + ROW / 2} drawing={drawing} href={page.href(`${reasonPath(row.id)}`)} />
      ))}
    </svg>
  );
}

function Ruling({
  drawing,
  top,
  bottom,
}: {
  readonly drawing: ChronologyDrawing;
  readonly top: number;
  readonly bottom: number;
}): JSX.Element {
  return (
    <g aria-hidden="true">
      {drawing.decades.map(({ x, label }) => (
        <g>
          <line class="decade" x1={x} x2={x} y1={top - 4} y2={bottom + 6} />
          <text class="decade-label" x={x} y={bottom + 22} text-anchor="middle">
            {label}
          </text>
        </g>
      ))}
      {drawing.references.map(({ x, label, labelX }) => (
        <g>
          <path class="reference" d={`M${labelX} ${top - 18} L${x} ${top - 6} V${bottom + 6}`} />
          <text class="reference-label" transform={`translate(${labelX + 4.5} ${top - 22}) rotate(-90)`}>
            {shorten(label, 40)}
          </text>
        </g>
      ))}
    </g>
  );
}

function RowMarks({
  row,
  y,
  drawing,
  href,
}: {
  readonly row: Row;
  readonly y: number;
  readonly drawing: ChronologyDrawing;
  readonly href: string;
}): JSX.Element {
  return (
    <a href={href}>
      <title>{row.sentence}</title>
      <rect class="row-hit" x={0} y={y - ROW / 2} width={drawing.width} height={ROW} />
      <text class="event-name" x={0} y={y + 5}>
        {shorten(row.title, 44)}
      </text>
      {row.outside ? (
        <text
          class="outside"
          x={row.outside === 'before' ? drawing.left + 6 : drawing.right - 6}
          y={y + 5}
          text-anchor={row.outside === 'before' ? 'start' : 'end'}
        >
          {row.outside === 'before' ? 'earlier: ' : 'later: '}
          {row.years}
        </text>
      ) : null}
      {row.bars.map((bar) => (
        <BarMark bar={bar} y={y} />
      ))}
      {row.core ? <rect class="core" x={row.core.x1} y={y - 3} width={row.core.x2 - row.core.x1} height={6} /> : null}
      {row.crossing ? <Crossing left={row.crossing.left} right={row.crossing.right} y={y} /> : null}
      <text class="years" x={drawing.right + 14} y={y + 5}>
        {row.years}
        <tspan class="years-letter" dx="6">
          {row.letter}
        </tspan>
      </text>
    </a>
  );
}

function BarMark({ bar, y }: { readonly bar: Bar; readonly y: number }): JSX.Element | null {
  const height = THICKNESS[bar.grade];
  const unbounded = bar.openLeft && bar.openRight;
  if (unbounded && bar.grade !== 'established') return null;
  if (bar.grade === 'conjectural') {
    const dots = Math.max(1, Math.floor((bar.x2 - bar.x1) / 9));
    return (
      <g class="conjectural">
        {Array.from({ length: dots }, (_, i) => (
          <circle cx={round(bar.x1 + ((i + 0.5) * (bar.x2 - bar.x1)) / dots)} cy={y} r={1.1} />
        ))}
      </g>
    );
  }
  const top = y - height / 2;
  const [a, b] = [bar.x1, bar.x2];
  const tip = bar.grade === 'established' ? 9 : 6;
  const left = bar.openLeft ? `L${a} ${y} ` : `L${a} ${top + height} L${a} ${top} `;
  const right = bar.openRight
    ? `L${b - tip} ${top} L${b} ${y} L${b - tip} ${top + height} `
    : `L${b} ${top} L${b} ${top + height} `;
  const start = bar.openLeft ? a + tip : a;
  return (
    <path
      class={unbounded ? 'unbounded' : bar.grade}
      d={`M${start} ${top} ${right}L${start} ${top + height} ${left}Z`}
    />
  );
}

/** Two facing brackets at the bounds that cross, and a word. */
function Crossing({
  left,
  right,
  y,
}: {
  readonly left: number;
  readonly right: number;
  readonly y: number;
}): JSX.Element {
  return (
    <g class="crossing">
      <path d={`M${left - 5} ${y - 10} H${left} V${y + 10} H${left - 5}`} />
      <path d={`M${right + 5} ${y - 10} H${right} V${y + 10} H${right + 5}`} />
      <text x={right + 9} y={y + 4.5}>
        disputed
      </text>
    </g>
  );
}

function shorten(text: string, most: number): string {
  return text.length <= most ? text : `${text.slice(0, most - 1).trimEnd()}…`;
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
