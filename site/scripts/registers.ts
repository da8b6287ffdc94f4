import { told } from './told.ts';

/** Makes registers sortable by their heads and filterable by a field; the table itself needs no script. */
for (const table of document.querySelectorAll<HTMLTableElement>('table[data-register]')) {
  addFilter(table);
  addSorting(table);
}

function addFilter(table: HTMLTableElement): void {
  const label = document.createElement('label');
  label.className = 'filter';
  label.append(told('Show only rows with'), ' ');
  const field = document.createElement('input');
  field.type = 'search';
  label.append(field);
  const status = document.createElement('span');
  status.setAttribute('role', 'status');
  label.append(' ', status);
  table.closest('.scroll')?.before(label);
  field.addEventListener('input', () => {
    const wanted = fold(field.value);
    let shown = 0;
    for (const row of bodyRows(table)) {
      row.hidden = !fold(row.textContent ?? '').includes(wanted);
      if (!row.hidden) shown += 1;
    }
    status.textContent = wanted === '' ? '' : told('{0} of {1}', shown, bodyRows(table).length);
  });
}

function addSorting(table: HTMLTableElement): void {
  table.querySelectorAll<HTMLTableCellElement>('thead th').forEach((head, column) => {
    const button = document.createElement('button');
    button.type = 'button';
    button.append(...head.childNodes);
    head.append(button);
    button.addEventListener('click', () => {
      const down = head.getAttribute('aria-sort') === 'ascending';
      for (const other of table.querySelectorAll('thead th')) other.removeAttribute('aria-sort');
      head.setAttribute('aria-sort', down ? 'descending' : 'ascending');
      const text = (row: HTMLTableRowElement): string => row.cells[column]?.textContent ?? '';
      const rows = bodyRows(table).sort(
        (a, b) => text(a).localeCompare(text(b), undefined, { numeric: true }) * (down ? -1 : 1),
      );
      table.tBodies[0]?.append(...rows);
    });
  });
}

function bodyRows(table: HTMLTableElement): HTMLTableRowElement[] {
  return [...(table.tBodies[0]?.rows ?? [])];
}

function fold(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().trim();
}
