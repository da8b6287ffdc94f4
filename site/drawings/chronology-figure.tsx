import type { JSX } from 'preact';
import type { Grade } from '../../src/base/grade.ts';
import type { EntryRanges } from '../../src/findings/range-changes.ts';
import { type Bar, layOutRow, type Row, type Ruling as RulingLines } from '../../src/publish/chronology-drawing.ts';
import { said, say, words } from '../say.ts';
import { Still } from './still.ts';

const ROW = 30;
const FOOT = 34;

/** Height of each grade's mark; each further grade is drawn inside the one before. */
const THICKNESS = { established: 14, probable: 10, possible: 6, conjectural: 0 } as const;

interface Props {
  readonly events: readonly EntryRanges[];
  readonly ruling: RulingLines;
  readonly printedGrade: Grade;
  /** Where the row of an event leads. */
  hrefOf(event: string): string;
}

/** The chronology as one SVG: legible in print at A4, in grey, and without scripts. */
export function ChronologyFigure({ events, ruling, printedGrade, hrefOf }: Props): JSX.Element {
  const { format } = ruling;
  const longest = Math.max(0, ...ruling.references.map(({ label }) => shorten(label, format.name).length));
  const top = longest > 0 ? 34 + longest * 6.1 : 20;
  const bottom = top + events.length * ROW;
  return (
    <svg
      class="chronology"
      viewBox={`0 0 ${format.width} ${bottom + FOOT}`}
      role="group"
      aria-label={words('Chronology: one row an event; the table below says the same')}
    >
      <Ruling ruling={ruling} top={top} bottom={bottom} />
      {events.map((event, i) => (
        <EventRow
          key={event.id}
          event={event}
          ruling={ruling}
          printedGrade={printedGrade}
          y={top + i * ROW + ROW / 2}
          href={hrefOf(event.id)}
        />
      ))}
    </svg>
  );
}

interface RulingProps {
  readonly ruling: RulingLines;
  readonly top: number;
  readonly bottom: number;
}

/** Decades and reference dates behind the rows. */
class Ruling extends Still<RulingProps> {
  override render({ ruling, top, bottom }: RulingProps): JSX.Element {
    return (
      <g aria-hidden="true">
        {ruling.decades.map(({ x, label }) => (
          <g>
            <line class="decade" x1={x} x2={x} y1={top - 4} y2={bottom + 6} />
            <text class="decade-label" x={x} y={bottom + 22} text-anchor="middle">
              {label}
            </text>
          </g>
        ))}
        {ruling.references.map(({ x, label, labelX }) => (
          <g>
            <path class="reference" d={`M${labelX} ${top - 18} L${x} ${top - 6} V${bottom + 6}`} />
            <text class="reference-label" transform={`translate(${labelX + 4.5} ${top - 22}) rotate(-90)`}>
              {shorten(label, ruling.format.name)}
            </text>
          </g>
        ))}
      </g>
    );
  }
}

interface EventRowProps {
  readonly event: EntryRanges;
  readonly ruling: RulingLines;
  readonly printedGrade: Grade;
  readonly y: number;
  readonly href: string;
}

/** A row that is drawn anew only where its event changed. */
class EventRow extends Still<EventRowProps> {
  override render({ event, ruling, printedGrade, y, href }: EventRowProps): JSX.Element {
    return <RowMarks row={layOutRow(event, ruling, printedGrade)} y={y} ruling={ruling} href={href} />;
  }
}

function RowMarks({
  row,
  y,
  ruling,
  href,
}: {
  readonly row: Row;
  readonly y: number;
  readonly ruling: RulingLines;
  readonly href: string;
}): JSX.Element {
  const { format } = ruling;
  return (
    <a href={href}>
      <title>{said(row.sentence)}</title>
      <rect class="row-hit" x={0} y={y - ROW / 2} width={format.width} height={ROW} />
      <text class="event-name" x={0} y={y + 5}>
        {shorten(row.title, format.title)}
      </text>
      {row.outside ? (
        <text
          class="outside"
          x={row.outside === 'before' ? format.left + 6 : format.right - 6}
          y={y + 5}
          text-anchor={row.outside === 'before' ? 'start' : 'end'}
        >
          {row.outside === 'before' ? words('earlier: ') : words('later: ')}
          {said(row.years)}
        </text>
      ) : null}
      {row.bars.map((bar) => (
        <BarMark bar={bar} y={y} />
      ))}
      {row.core ? <rect class="core" x={row.core.x1} y={y - 3} width={row.core.x2 - row.core.x1} height={6} /> : null}
      {row.crossing ? <Crossing left={row.crossing.left} right={row.crossing.right} y={y} /> : null}
      <text class="years" x={format.right + 14} y={y + 5}>
        {said(row.years)}
        <tspan class="years-letter" dx="6">
          {row.letter}
        </tspan>
      </text>
    </a>
  );
}

/** The range of one grade in a row. */
export function BarMark({ bar, y }: { readonly bar: Bar; readonly y: number }): JSX.Element | null {
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
  const [top, foot] = [y - height / 2, y + height / 2];
  const tip = bar.grade === 'established' ? 9 : 6;
  const [a, b] = [bar.x1 + (bar.openLeft ? tip : 0), bar.x2 - (bar.openRight ? tip : 0)];
  // Always six corners, so that a range that moves keeps its shape on the way.
  return (
    <path
      class={unbounded ? 'unbounded' : bar.grade}
      d={`M${a} ${top} L${b} ${top} L${bar.x2} ${y} L${b} ${foot} L${a} ${foot} L${bar.x1} ${y} Z`}
    />
  );
}

/** Two facing brackets at the bounds that cross, and a word. */
export function Crossing({
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
        {say('statements disagree')}
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
