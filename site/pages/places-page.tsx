import type { JSX } from 'preact';
import { named } from '../../src/base/said.ts';
import { findRoute, type Leg, type Route } from '../../src/findings/route.ts';
import { titleOf } from '../../src/model/catalogue.ts';
import { entryPath } from '../../src/publish/page-paths.ts';
import { layOutPlaces, type PlacesDrawing } from '../../src/publish/places-drawing.ts';
import type { PageContext } from '../context.ts';
import { say, term, words } from '../say.ts';
import { Layout } from './layout.tsx';
import { EntryLink, Joined, Scroll } from './parts.tsx';

/** Where the pieces were, and by which ways they went. */
export function PlacesPage({ page }: { readonly page: PageContext }): JSX.Element {
  const route = findRoute(page.file);
  const drawing = page.land
    ? layOutPlaces(route, page.land, ({ place }) => titleOf(place, page.file.settings.languages))
    : null;
  return (
    <Layout page={page} title={words('Places')} standing={words('Where the pieces were, and by which ways they went.')}>
      <h1>{say('Places')}</h1>
      {drawing ? (
        <figure class="wide">
          <RouteMap page={page} drawing={drawing} />
          <figcaption>
            {say(
              'Solid: an event tells that way, on probable statements or better. Dashed: inferred from who had the pieces next, or told on weaker statements. Lines follow great circles, since the true way is not known. Land without borders, as borders are those of today (Natural Earth, public domain).{0}',
              page.file.catalogue.audience === 'public'
                ? words(' Sites are shown as exactly as their entries allow.')
                : '',
            )}
          </figcaption>
        </figure>
      ) : (
        <p>{say('No place of this file has coordinates.')}</p>
      )}
      <Legs page={page} legs={route.legs} />
      <Places page={page} route={route} />
    </Layout>
  );
}

function RouteMap({ page, drawing }: { readonly page: PageContext; readonly drawing: PlacesDrawing }): JSX.Element {
  const languages = page.file.settings.languages;
  return (
    <svg
      class="map"
      viewBox={`0 0 ${drawing.width} ${drawing.height}`}
      role="group"
      aria-label={words('Map of the places and the ways between them; the table below says the same')}
    >
      <rect class="sea" width={drawing.width} height={drawing.height} />
      <path class="grid" d={drawing.grid} aria-hidden="true" />
      <path class="land" d={drawing.land} aria-hidden="true" />
      {drawing.legs.map(({ leg, path }) => (
        <path class={`leg ${leg.is}`} d={path} />
      ))}
      {drawing.legs.map(({ x, y, middleY }) =>
        y === middleY ? null : <path class="leader" d={`M${x} ${middleY}V${y}`} aria-hidden="true" />,
      )}
      {drawing.legs.map(({ leg, x, y }, i) => (
        <a href={`#leg-${i + 1}`}>
          <title>
            {words(
              '{0}: {1} to {2}, {3}',
              i + 1,
              titleOf(leg.from.place, languages),
              titleOf(leg.to.place, languages),
              named(leg.is),
            )}
          </title>
          <circle class="leg-ring" cx={x} cy={y} r={10} />
          <text class="leg-number" x={x} y={y + 4.5} text-anchor="middle">
            {i + 1}
          </text>
        </a>
      ))}
      {drawing.places.map(({ point, x, y, labelX, labelY, anchor }) => (
        <a href={page.href(entryPath(point.place.id))}>
          <title>{titleOf(point.place, languages)}</title>
          <circle class="spot" cx={x} cy={y} r={4} />
          <text class="spot-name" x={labelX} y={labelY} text-anchor={anchor}>
            {titleOf(point.place, languages)}
          </text>
        </a>
      ))}
    </svg>
  );
}

function Legs({ page, legs }: { readonly page: PageContext; readonly legs: readonly Leg[] }): JSX.Element | null {
  if (legs.length === 0) return null;
  return (
    <Scroll label={words('Ways between the places')}>
      <table class="stacking">
        <thead>
          <tr>
            <th scope="col">{say('Way')}</th>
            <th scope="col">{say('Pieces')}</th>
            <th scope="col">{say('Told or inferred')}</th>
            <th scope="col">{say('Rests on')}</th>
          </tr>
        </thead>
        <tbody>
          {legs.map(({ from, to, is, pieces, rests }, i) => (
            <tr id={`leg-${i + 1}`}>
              <th scope="row">
                {say(
                  '{0}. {1} to {2}',
                  i + 1,
                  <EntryLink page={page} id={from.place.id} />,
                  <EntryLink page={page} id={to.place.id} />,
                )}
              </th>
              <td>
                <span class="cell-label">{say('pieces')} </span>
                <Joined items={pieces.map((id) => <EntryLink page={page} id={id} />)} />
              </td>
              <td>{term(is)}</td>
              <td>
                <span class="cell-label">{say('rests on')} </span>
                <Joined items={rests.map((id) => <EntryLink page={page} id={id} />)} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function Places({ page, route }: { readonly page: PageContext; readonly route: Route }): JSX.Element {
  return (
    <>
      <h2>{say('Places of this file')}</h2>
      <ul>
        {page.file.catalogue.ofType('place').map((place) => (
          <li>
            <EntryLink page={page} id={place.id} />
            {place.keys.kind ? `, ${term(place.keys.kind)}` : ''}
            {place.keys.within ? <>{say(', within {0}', <EntryLink page={page} id={place.keys.within} />)}</> : null}
            {route.unplaced.some((one) => one.id === place.id) ? words('; not on the map') : ''}
          </li>
        ))}
      </ul>
    </>
  );
}
