import type { JSX } from 'preact';
import type { Mark } from '../../src/publish/plan-marks.ts';

const FILLED: readonly Mark[] = ['fill', 'addition', 'retouching', 'loss', 'delamination'];

/** The mark as it is drawn on the plan, small. */
export function MarkSample({ mark }: { readonly mark: Mark }): JSX.Element {
  const line =
    mark === 'coating' ? 'M2 8Q5 3 8 8T14 8T20 8T26 8T32 8' : FILLED.includes(mark) ? 'M3 3H31V13H3Z' : 'M2 8H32';
  return (
    <svg class="plan sample" viewBox="0 0 34 16" aria-hidden="true">
      <g class={`mark mark-${mark}`}>
        {mark === 'sample' ? <circle class="shape" cx={17} cy={8} r={5} /> : null}
        {mark === 'fixing' ? <path class="shape" d="M12 3H22V13H12Z" /> : null}
        {mark === 'label' ? <path class="flag" d="M13 15V2L24 5.5L13 9" /> : null}
        {['sample', 'fixing', 'label'].includes(mark) ? null : <path class="shape" d={line} />}
        {mark === 'section-joint' ? <path class="joint-gap" d="M2 8H32" /> : null}
        {mark === 'cut-edge' ? <path class="ticks" d="M8 8V14M17 8V14M26 8V14" /> : null}
      </g>
    </svg>
  );
}
