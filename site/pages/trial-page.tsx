import type { JSX } from 'preact';
import { NO_CHANGE, openTrialFile } from '../../src/findings/run-trial.ts';
import { trialFileOf } from '../../src/findings/trial-file.ts';
import type { Language } from '../../src/language/language.ts';
import type { PageContext } from '../context.ts';
import { language, say, words } from '../say.ts';
import { rulingOf, TrialView } from '../trial/trial-view.tsx';
import { Layout } from './layout.tsx';

/** Withdraw and see: the file as published, which a script makes live with the solver of the build itself. */
export function TrialPage({ page }: { readonly page: PageContext }): JSX.Element {
  const file = trialFileOf(page.file);
  const standing = openTrialFile(file).run(NO_CHANGE);
  const spoken = language();
  return (
    <Layout
      page={page}
      title={words('Withdraw and see')}
      standing={words('What the dates would be without some statements; a reader’s trial.')}
      script="trial.js"
    >
      <h1>{say('Withdraw and see')}</h1>
      <p class="lead">
        {say(
          'Strike out a statement, or take it at another grade, and see which dates, contradictions and orders to reference dates change. The computing is the same as that of the file itself, and happens in your browser.',
        )}
      </p>
      <div id="trial">
        <TrialView
          file={file}
          state={NO_CHANGE}
          standing={standing}
          result={standing}
          ruling={rulingOf(file, standing)}
          unknown={[]}
          actions={null}
        />
      </div>
      <Data id="trial-file" value={file} />
      {spoken.tag === 'en' && !spoken.keptBack ? null : <Data id="trial-language" value={forBrowser(spoken)} />}
    </Layout>
  );
}

/** What the script of the page may say: of the catalogue only what stands on pages. */
function forBrowser(spoken: Language): Language {
  const shown = spoken.keptBack ? spoken.shown : {};
  return { ...spoken, messages: spoken.pages, shown, pages: {}, prose: {} };
}

/** Data for the script of the page. */
function Data({ id, value }: { readonly id: string; readonly value: unknown }): JSX.Element {
  const text = JSON.stringify(value).replaceAll('<', '\\u003c');
  return <script type="application/json" id={id} dangerouslySetInnerHTML={{ __html: text }} />;
}
