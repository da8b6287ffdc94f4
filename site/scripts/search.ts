import MiniSearch from 'minisearch';
import type { SearchRow } from '../../src/publish/search-data.ts';
import { told } from './told.ts';

/** Most results that are shown at once. */
const MOST = 40;

const place = document.getElementById('search');
const data = document.getElementById('search-rows');
if (place && data) start(place, JSON.parse(data.textContent ?? '[]') as SearchRow[]);

function start(home: HTMLElement, rows: readonly SearchRow[]): void {
  const index = new MiniSearch<SearchRow>({
    fields: ['id', 'title', 'names', 'summary', 'type'],
    storeFields: ['id', 'title', 'names', 'summary', 'type', 'address'],
    processTerm: fold,
    searchOptions: {
      boost: { id: 4, title: 3, names: 3 },
      prefix: true,
      fuzzy: (term) => (term.length > 4 ? 0.2 : false),
    },
  });
  index.addAll(rows);
  const label = document.createElement('label');
  label.className = 'filter';
  label.append(told('Search for'), ' ');
  const field = document.createElement('input');
  field.type = 'search';
  field.autocomplete = 'off';
  label.append(field);
  const status = document.createElement('p');
  status.className = 'aside';
  status.setAttribute('role', 'status');
  const list = document.createElement('ol');
  list.className = 'found';
  home.append(label, status, list);
  const show = (): void => {
    const words = field.value.trim();
    const found = words === '' ? [] : index.search(words, { combineWith: 'AND' });
    status.textContent =
      words === ''
        ? ''
        : found.length === 0
          ? told('Nothing found.')
          : found.length > MOST
            ? told('Found: {0}; the first {1} are shown.', found.length, MOST)
            : told('Found: {0}.', found.length);
    list.replaceChildren(...found.slice(0, MOST).map((one) => result(one as unknown as SearchRow)));
    // The words are kept in the part of the address that browsers do not send.
    history.replaceState(null, '', words === '' ? location.pathname : `#${encodeURIComponent(words)}`);
  };
  field.addEventListener('input', show);
  field.value = decodeURIComponent(location.hash.slice(1));
  if (field.value !== '') show();
}

function result({ id, type, title, summary, address }: SearchRow): HTMLLIElement {
  const item = document.createElement('li');
  const link = document.createElement('a');
  link.href = address;
  link.textContent = title;
  const facts = document.createElement('span');
  facts.className = 'aside';
  facts.textContent = ` ${id}, ${type}`;
  const words = document.createElement('p');
  words.textContent = summary;
  item.append(link, facts, ...(summary === '' ? [] : [words]));
  return item;
}

/** Small letters without accents; the two forms of the Greek sigma are one. */
function fold(term: string): string {
  return term.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().replace(/ς/g, 'σ');
}
