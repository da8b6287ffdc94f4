import type { JSX } from 'preact';
import type { PageContext } from '../context.ts';
import { say, words } from '../say.ts';
import { Layout } from './layout.tsx';
import { ProblemsOfEntry } from './problem-list.tsx';

/** The page of an entry that could not be read: what is wrong, beside its lines. */
export function FaultyEntryPage({ page, id }: { readonly page: PageContext; readonly id: string }): JSX.Element {
  return (
    <Layout page={page} title={id} standing={words('An entry that could not be read.')} usesGrades={false}>
      <h1>{id}</h1>
      <p>{say('This entry is left out of the preview, with every statement that names it, until it is mended.')}</p>
      <ProblemsOfEntry page={page} id={id} />
    </Layout>
  );
}
