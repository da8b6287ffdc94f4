import type { JSX } from 'preact';
import { type PanelFindings, statedOf } from '../../src/physical/panels.ts';
import type { PageContext } from '../context.ts';
import { say, semicolon, words } from '../say.ts';
import { EntryLink, Scroll } from './parts.tsx';

interface Props {
  readonly page: PageContext;
  readonly panel: PanelFindings;
}

/** The sections that the joints make, and the spacing of the joints. */
export function SectionsPart({ page, panel }: Props): JSX.Element | null {
  const { sections, joints, dangling, tooFew, upright, level } = panel.sections;
  if (joints.length === 0) return null;
  const named =
    (panel.geometry.object.keys.panels ?? []).find((one) => one.id === panel.geometry.panel)?.sections ?? [];
  const matched = sections.map((one) => statedOf(panel.geometry, panel.sections, one));
  const unmatched = named.filter((one) => !matched.includes(one));
  return (
    <section>
      <h2>{say('Sections')}</h2>
      <p>
        {say(
          "The pieces that the section joints make of the outline, numbered from the top and from the left. Sizes are those of the least upright rectangle about each, half of the joint's width included.",
        )}
      </p>
      <Scroll label={words('Sections')}>
        <table>
          <thead>
            <tr>
              <th scope="col">{say('Section')}</th>
              <th scope="col">{say('Width × height, mm')}</th>
              <th scope="col">{say('cm²')}</th>
              {matched.some((one) => one !== null) ? <th scope="col">{say('Said of it')}</th> : null}
            </tr>
          </thead>
          <tbody>
            {sections.map((one, i) => (
              <tr>
                <th scope="row">{one.number}</th>
                <td>
                  {Math.round(one.width)} × {Math.round(one.height)}
                </td>
                <td>{(one.squareMm / 100).toFixed(0)}</td>
                {matched.some((said) => said !== null) ? <td>{saidOf(matched[i] ?? undefined)}</td> : null}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      {unmatched.length > 0 ? (
        <p>
          {say(
            'Named by the object, but without a point that says which piece is meant: {0}.',
            unmatched.map((one) => saidOf(one)).join(semicolon()),
          )}
        </p>
      ) : null}
      {dangling.map(({ joint, at }) => (
        <p>
          {say(
            '{0} ends inside a section, at ({1}, {2}); it divides nothing there.',
            <EntryLink page={page} id={joint.trace.id} />,
            Math.round(at[0]),
            Math.round(at[1]),
          )}
        </p>
      ))}
      <p>
        {tooFew
          ? words('Too few joints to ask whether they stand at a regular distance.')
          : [upright, level]
              .map((found, i) =>
                found
                  ? words(
                      '{0} joints: {1}; random lines do as well in {2} of 100 cases.',
                      i === 0 ? words('Upright') : words('Level'),
                      found.isRegular
                        ? words('a module of {0} mm', found.module.toFixed(0))
                        : words('no regular distance'),
                      (100 * found.byChance).toFixed(1),
                    )
                  : '',
              )
              .join(' ')}
      </p>
    </section>
  );
}

function saidOf(section: Readonly<Record<string, unknown>> | undefined): string {
  return Object.entries(section ?? {})
    .filter(([key]) => key !== 'point')
    .map(([key, value]) =>
      key === 'id' ? words('section {0}', String(value)) : `${key.replaceAll('-', ' ')} ${String(value)}`,
    )
    .join(', ');
}
