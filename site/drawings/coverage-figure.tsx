import type { JSX } from 'preact';
import type { ExaminationCoverage, Face, FaceState } from '../../src/physical/coverage.ts';
import { say, semicolon, term, words } from '../say.ts';

const WIDTH = 46;
const EDGE = 7;
const GAP = 4;

/** A panel laid open: the front with its four edges about it, the back beside it; looked at = tinted, not accessible = crossed. */
export function CoverageFigure({
  coverage,
  name,
  ratio,
}: {
  readonly coverage: ExaminationCoverage;
  readonly name: string;
  /** Height of the panel by its width. */
  readonly ratio: number;
}): JSX.Element {
  const height = Math.round(Math.min(2, Math.max(0.5, ratio)) * WIDTH);
  const inner = EDGE + GAP;
  const places: Readonly<Record<Face, readonly [number, number, number, number]>> = {
    front: [inner, inner, WIDTH, height],
    top: [inner, 0, WIDTH, EDGE],
    bottom: [inner, inner + height + GAP, WIDTH, EDGE],
    left: [0, inner, EDGE, height],
    right: [inner + WIDTH + GAP, inner, EDGE, height],
    back: [2 * inner + WIDTH + 14, inner, WIDTH, height],
  };
  const total = [2 * inner + 2 * WIDTH + 16, 2 * inner + height + 16] as const;
  return (
    <svg
      class="coverage"
      viewBox={`-1 -1 ${total[0]} ${total[1]}`}
      width={total[0] * 1.5}
      role="img"
      aria-label={sayCoverage(coverage, name)}
    >
      {Object.entries(places).map(([face, [x, y, w, h]]) => {
        const state = coverage.faces[face as Face];
        return (
          <g class={CLASS_OF[state]}>
            <rect x={x} y={y} width={w} height={h} />
            {state === 'not accessible' ? (
              <path d={`M${x} ${y}L${x + w} ${y + h}M${x + w} ${y}L${x} ${y + h}`} />
            ) : null}
          </g>
        );
      })}
      <text x={inner + WIDTH / 2} y={total[1] - 3} text-anchor="middle">
        {say('front')}
      </text>
      <text x={2 * inner + WIDTH * 1.5 + 14} y={total[1] - 3} text-anchor="middle">
        {say('back')}
      </text>
    </svg>
  );
}

const CLASS_OF: Readonly<Record<FaceState, string>> = {
  'looked at': 'face looked-at',
  'not accessible': 'face no-access',
  'not looked at': 'face',
  'face not recorded': 'face unrecorded',
};

/** The same as a sentence: "looked at: front, back; not accessible: left". */
export function sayCoverage({ faces }: ExaminationCoverage, name: string): string {
  const by = new Map<FaceState, string[]>();
  for (const [face, state] of Object.entries(faces)) by.set(state, [...(by.get(state) ?? []), face]);
  const said = [...by].map(([state, list]) => words('{0}: {1}', term(state), list.map(term).join(', ')));
  return words('{0}: {1}', name, said.join(semicolon()));
}
