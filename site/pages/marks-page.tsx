import type { ComponentChildren, JSX } from 'preact';
import { GRADES } from '../../src/base/grade.ts';
import { MARK_WORDS, type Mark } from '../../src/publish/plan-marks.ts';
import type { PageContext } from '../context.ts';
import { BarMark, Crossing } from '../drawings/chronology-figure.tsx';
import { MarkSample } from '../drawings/mark-sample.tsx';
import { PlanPatterns } from '../drawings/plan-shape.tsx';
import { say, term, words } from '../say.ts';
import { Layout } from './layout.tsx';
import { GradeMark } from './parts.tsx';
import { Prose } from './prose.tsx';

/** Every mark of the drawings with its meaning, drawn by the same code as the drawings themselves. */
export function MarksPage({ page }: { readonly page: PageContext }): JSX.Element {
  return (
    <Layout page={page} title={words('The marks')} standing={words('What the drawings show, and how.')}>
      <h1>{say('The marks')}</h1>
      <Prose
        name="marks"
        slots={{
          time: () => <TimeMarks />,
          custody: () => <CustodyMarks />,
          plan: () => <PlanMarks />,
          places: () => <PlaceMarks />,
        }}
      />
    </Layout>
  );
}

function TimeMarks(): JSX.Element {
  return (
    <Marks>
      {GRADES.map((grade) => (
        <Meaning
          mark={
            <TimeSample>
              <BarMark bar={{ grade, x1: 8, x2: 132, openLeft: false, openRight: false }} y={12} />
            </TimeSample>
          }
        >
          {say('the range on statements that are {0} {1} or better', term(grade), <GradeMark grade={grade} />)}
        </Meaning>
      ))}
      <Meaning
        mark={
          <TimeSample>
            <BarMark bar={{ grade: 'established', x1: 8, x2: 132, openLeft: false, openRight: false }} y={12} />
            <BarMark bar={{ grade: 'probable', x1: 40, x2: 110, openLeft: false, openRight: false }} y={12} />
            <BarMark bar={{ grade: 'possible', x1: 40, x2: 86, openLeft: false, openRight: false }} y={12} />
          </TimeSample>
        }
      >
        {say('one inside the other: each further grade only narrows the range')}
      </Meaning>
      <Meaning
        mark={
          <TimeSample>
            <BarMark bar={{ grade: 'established', x1: 8, x2: 132, openLeft: false, openRight: true }} y={12} />
          </TimeSample>
        }
      >
        {say('no limit known on the side of the tip')}
      </Meaning>
      <Meaning
        mark={
          <TimeSample>
            <BarMark bar={{ grade: 'probable', x1: 8, x2: 132, openLeft: false, openRight: false }} y={12} />
            <rect class="core" x={52} y={9} width={40} height={6} />
          </TimeSample>
        }
      >
        {say('under way: it had begun and had not ended, on statements of that grade, whatever the true dates are')}
      </Meaning>
      <Meaning
        mark={
          <TimeSample>
            <Crossing left={30} right={58} y={12} />
          </TimeSample>
        }
      >
        {say('two bounds cross: statements that cannot all be right')}
      </Meaning>
      <Meaning
        mark={
          <TimeSample>
            <path class="reference" d="M66 2 L70 7 V23" />
          </TimeSample>
        }
      >
        {say('the day of a law, treaty or policy that this file has chosen')}
      </Meaning>
    </Marks>
  );
}

function CustodyMarks(): JSX.Element {
  return (
    <Marks>
      <Meaning
        mark={
          <LineSample drawing="custody">
            <path class="throughout" d="M8 12H132" />
          </LineSample>
        }
      >
        {say('held throughout, told to the day')}
      </Meaning>
      <Meaning
        mark={
          <LineSample drawing="custody">
            <path class="possibly" d="M8 12H132" />
          </LineSample>
        }
      >
        {say('possibly held')}
      </Meaning>
      <Meaning
        mark={
          <LineSample drawing="custody">
            <path class="throughout shared" d="M8 9H132M8 15H132" />
          </LineSample>
        }
      >
        {say('held by several together')}
      </Meaning>
      <Meaning
        mark={
          <LineSample drawing="custody">
            <circle class="recorded" cx={70} cy={12} r={4} />
          </LineSample>
        }
      >
        {say('recorded once, within a stretch; a ring around it where it was shared')}
      </Meaning>
      <Meaning
        mark={
          <LineSample drawing="custody">
            <path class="open" d="M15 8L8 12L15 16" />
          </LineSample>
        }
      >
        {say('no limit known on this side')}
      </Meaning>
      <Meaning
        mark={
          <LineSample drawing="chains">
            <path class="possibly" d="M8 12H132" />
            <path class="ends" d="M8 7V17M132 7V17" />
          </LineSample>
        }
      >
        {say('an act lay somewhere between the two strokes')}
      </Meaning>
      <Meaning
        mark={
          <LineSample drawing="chains">
            <path class="asserted" d="M8 12H132" />
          </LineSample>
        }
      >
        {say('a title as it is asserted: a legal position, never computed with')}
      </Meaning>
      <Meaning mark={<span class="aside">{say('bare paper, a length in it')}</span>}>
        {say('not known, for so long')}
      </Meaning>
      <Meaning mark={<span class="aside">{say('(a name in parentheses)')}</span>}>
        {say('a dealer, agent or consignee')}
      </Meaning>
    </Marks>
  );
}

function PlanMarks(): JSX.Element {
  return (
    <>
      <svg class="patterns" aria-hidden="true">
        <PlanPatterns size={10} />
      </svg>
      <Marks>
        {(Object.keys(MARK_WORDS) as Mark[]).map((mark) => (
          <Meaning mark={<MarkSample mark={mark} />}>{term(MARK_WORDS[mark])}</Meaning>
        ))}
      </Marks>
    </>
  );
}

function PlaceMarks(): JSX.Element {
  return (
    <Marks>
      <Meaning
        mark={
          <LineSample drawing="map">
            <path class="leg told" d="M8 12H132" />
          </LineSample>
        }
      >
        {say('a way that an entry tells')}
      </Meaning>
      <Meaning
        mark={
          <LineSample drawing="map">
            <path class="leg inferred" d="M8 12H132" />
          </LineSample>
        }
      >
        {say('a way inferred from where it was before and after')}
      </Meaning>
    </Marks>
  );
}

function Marks({ children }: { readonly children: ComponentChildren }): JSX.Element {
  return <dl class="marks">{children}</dl>;
}

function Meaning({
  mark,
  children,
}: {
  readonly mark: ComponentChildren;
  readonly children: ComponentChildren;
}): JSX.Element {
  return (
    <div>
      <dt>{mark}</dt>
      <dd>{children}</dd>
    </div>
  );
}

function TimeSample({ children }: { readonly children: ComponentChildren }): JSX.Element {
  return <LineSample drawing="chronology">{children}</LineSample>;
}

/** A piece of a drawing, in the styles of the whole. */
function LineSample({
  drawing,
  children,
}: {
  readonly drawing: 'chronology' | 'custody' | 'chains' | 'map';
  readonly children: ComponentChildren;
}): JSX.Element {
  return (
    <svg class={`${drawing} mark-sample`} viewBox="0 0 140 24" aria-hidden="true">
      {children}
    </svg>
  );
}
