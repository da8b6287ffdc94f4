import type { JSX } from 'preact';
import type { Caution } from '../../src/findings/cautions.ts';
import { citationOf } from '../../src/model/row-citation.ts';
import { said, term } from '../say.ts';

/** Cautions with what they rest on; nothing where there are none. */
export function Cautions({ list }: { readonly list: readonly Caution[] }): JSX.Element {
  return (
    <>
      {list.map((one) => (
        <p class="caution">
          {term(one.text)} <span class="aside">{said(citationOf(one))}.</span>
        </p>
      ))}
    </>
  );
}
