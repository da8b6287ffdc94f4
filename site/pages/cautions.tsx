import type { JSX } from 'preact';
import type { Caution } from '../../src/findings/cautions.ts';
import { term } from '../say.ts';

/** Cautions with what they rest on; nothing where there are none. */
export function Cautions({ list }: { readonly list: readonly Caution[] }): JSX.Element {
  return (
    <>
      {list.map((one) => (
        <p class="caution">
          {term(one.text)}{' '}
          <span class="aside">
            {one.source} ({term(one.standing)}).
          </span>
        </p>
      ))}
    </>
  );
}
