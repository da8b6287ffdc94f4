import type { JSX } from 'preact';
import type { Path, Point } from '../../src/geometry/point.ts';
import type { NumberedShape } from '../../src/publish/plan-marks.ts';

/** Hatchings that stay apart in grey: fills slanted, additions crossed, retouching dotted, loose parts in wide dashes. */
export function PlanPatterns({ size }: { readonly size: number }): JSX.Element {
  const step = Math.round(size * 55) / 100;
  return (
    <defs>
      <pattern id="mark-fill" width={step} height={step} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line x1={0} y1={0} x2={0} y2={step} class="hatch" />
      </pattern>
      <pattern
        id="mark-addition"
        width={step}
        height={step}
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <path d={`M0 0V${step} M0 0H${step}`} class="hatch" />
      </pattern>
      <pattern id="mark-retouching" width={step} height={step} patternUnits="userSpaceOnUse">
        <circle cx={step / 2} cy={step / 2} r={step / 6} class="stipple" />
      </pattern>
      <pattern id="mark-delamination" width={step * 4} height={step * 2} patternUnits="userSpaceOnUse">
        <path d={`M0 ${step / 2}H${step * 2} M${step * 2} ${step * 1.5}H${step * 4}`} class="hatch" />
      </pattern>
    </defs>
  );
}

interface Props {
  readonly one: NumberedShape;
  readonly flip: (p: Point) => Point;
  /** Height of the letters in mm; marks are drawn in proportion. */
  readonly size: number;
  readonly inside: Point;
}

/** The lines of one shape by its mark. */
export function ShapeLines({ one, flip, size, inside }: Props): JSX.Element {
  const { shape, mark } = one;
  const path = shape.path.map(flip);
  if (shape.kind === 'point') return <PointMark one={one} at={path[0] as Point} size={size} />;
  const rings = [path, ...shape.holes.map((hole) => hole.map(flip))];
  const closed = shape.kind === 'area';
  const draw = mark === 'coating' ? wavy(size) : pathOf;
  const d = closed
    ? rings.map((ring) => `${draw(mark === 'coating' ? [...ring, ring[0] as Point] : ring)}Z`).join(' ')
    : draw(path);
  return (
    <>
      <path class="halo" d={d} />
      <path class="shape" d={d} fill-rule="evenodd" />
      {mark === 'section-joint' ? <path class="joint-gap" d={d} /> : null}
      {mark === 'cut-edge' ? <path class="ticks" d={ticksOf(path, inside, size)} /> : null}
      {mark === 'label' && closed ? <path class="shape" d={flagOf(path, size)} /> : null}
      <path class="hit" d={d} />
    </>
  );
}

/** A fixing is an open square, a label a flag, anything else a ring. */
function PointMark({
  one,
  at: [x, y],
  size,
}: {
  readonly one: NumberedShape;
  readonly at: Point;
  readonly size: number;
}): JSX.Element {
  const r = size * 0.45;
  if (one.mark === 'fixing') return <rect class="shape" x={x - r} y={y - r} width={2 * r} height={2 * r} />;
  if (one.mark === 'label')
    return (
      <path
        class="flag"
        d={`M${round(x)} ${round(y)}v${round(-2.4 * r)}l${round(2 * r)} ${round(0.7 * r)}l${round(-2 * r)} ${round(0.7 * r)}`}
      />
    );
  return <circle class="shape" cx={x} cy={y} r={r} />;
}

/** A small flag on the upper left corner of a label's outline. */
function flagOf(path: Path, size: number): string {
  const [x, y] = [Math.min(...path.map((p) => p[0])), Math.min(...path.map((p) => p[1]))];
  return `M${round(x)} ${round(y)}v${round(-size)}l${round(size * 0.8)} ${round(size * 0.3)}l${round(-size * 0.8)} ${round(size * 0.3)}`;
}

/** Short ticks on the side that is lost: away from the middle of the panel. */
function ticksOf(path: Path, [width, height]: Point, size: number): string {
  return path
    .slice(1)
    .map((point, i) => {
      const from = path[i] as Point;
      const [mx, my] = [(from[0] + point[0]) / 2, (from[1] + point[1]) / 2];
      const length = Math.hypot(point[0] - from[0], point[1] - from[1]) || 1;
      let [nx, ny] = [-(point[1] - from[1]) / length, (point[0] - from[0]) / length];
      if (nx * (mx - width / 2) + ny * (my - height / 2) < 0) [nx, ny] = [-nx, -ny];
      return `M${round(mx)} ${round(my)}L${round(mx + nx * size * 0.7)} ${round(my + ny * size * 0.7)}`;
    })
    .join('');
}

/** Draws a path as a row of small waves, for coatings and residues, whose edges are seldom sharp. */
function wavy(size: number): (path: Path) => string {
  return (path) =>
    path
      .map(([x, y], i) => {
        if (i === 0) return `M${round(x)} ${round(y)}`;
        const [u, v] = path[i - 1] as Point;
        const waves = Math.max(1, Math.round(Math.hypot(x - u, y - v) / (size * 0.8)));
        return Array.from({ length: waves }, (_, k) => {
          const [from, to] = [k / waves, (k + 1) / waves];
          const middle = (from + to) / 2;
          const lift = ((k % 2 === 0 ? 1 : -1) * size * 0.35) / Math.hypot(x - u, y - v);
          return `Q${round(u + middle * (x - u) - lift * (y - v))} ${round(v + middle * (y - v) + lift * (x - u))} ${round(u + to * (x - u))} ${round(v + to * (y - v))}`;
        }).join('');
      })
      .join('');
}

/** A path as straight lines, to a hundredth of a millimetre. */
export function pathOf(path: Path): string {
  return path.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${round(x)} ${round(y)}`).join('');
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
