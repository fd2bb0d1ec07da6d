'use strict';
// Everything can be read without this: it sorts and searches tables, shortens long ones, opens folds for print and for links.
const farmPage = (() => {
  const all = (selector, within) => [...(within || document).querySelectorAll(selector)];
  let filters = 0;

  function rowsOf(table) { return [...table.tBodies].flatMap(body => [...body.rows]); }

  function shorten(table, rows) {
    const most = Number(table.dataset.rows || 0);
    if (!most || rows.length <= most + 1) return;
    const hide = on => { for (const row of rows.slice(most)) { row.hidden = on; row.classList.add('over'); } };
    const line = document.createElement('p');
    line.className = 'all';
    const button = document.createElement('button');
    button.type = 'button';
    const count = rows.length.toLocaleString('en-US').replaceAll(',', table.dataset.group || ',');
    button.textContent = 'Show all ' + count + ' rows';
    button.addEventListener('click', () => { hide(false); line.remove(); delete table.dataset.rows; });
    line.append(button);
    table.closest('.scroll').after(line);
    hide(true);
    table.showAll = () => { if (line.isConnected) button.click(); };
  }

  function sortable(table, rows) {
    if (table.dataset.order === 'kept' || !table.tHead) return;
    const plain = rows.filter(row => !row.classList.contains('g'));
    const headings = [...table.tHead.rows[0].cells];
    if (plain.length < 4) return;
    let at = 0;
    for (const heading of headings) {
      const column = at + heading.colSpan - 1;
      at += heading.colSpan;
      const button = document.createElement('button');
      button.type = 'button';
      button.className = 'sort';
      button.append(...heading.childNodes);
      heading.append(button);
      button.addEventListener('click', () => sort(table, rows, plain, headings, heading, column));
    }
    if (plain.length > 20) search(table, rows, plain);
  }

  function sort(table, rows, plain, headings, heading, column) {
    if (table.showAll) table.showAll();
    const numeric = heading.classList.contains('n');
    const was = heading.getAttribute('aria-sort');
    const first = numeric ? 'descending' : 'ascending', second = numeric ? 'ascending' : 'descending';
    const now = was === first ? second : was === second ? null : first;
    headings.forEach(each => each.removeAttribute('aria-sort'));
    if (!now) { table.tBodies[0].append(...rows); rows.forEach(row => { row.hidden = false; }); return; }
    heading.setAttribute('aria-sort', now);
    const sign = now === 'ascending' ? 1 : -1;
    const key = row => { const cell = row.cells[column]; return numeric ? (cell.dataset.value === undefined ? null : Number(cell.dataset.value)) : cell.textContent.trim(); };
    const sorted = [...plain].sort((a, b) => {
      const x = key(a), y = key(b);
      // What isn't known stands last either way.
      if (x === null || y === null) return (x === null) - (y === null);
      return sign * (numeric ? x - y : x.localeCompare(y));
    });
    for (const row of rows) if (row.classList.contains('g')) row.hidden = true;
    table.tBodies[0].append(...sorted);
  }

  function search(table, rows, plain) {
    const box = document.createElement('div');
    box.className = 'filter';
    const label = document.createElement('label');
    const input = document.createElement('input');
    const count = document.createElement('span');
    input.id = 'filter-' + ++filters;
    label.htmlFor = input.id;
    label.textContent = 'Find in this table';
    input.type = 'search';
    input.autocomplete = 'off';
    count.setAttribute('role', 'status');
    box.append(label, input, count);
    table.closest('.scroll').before(box);
    input.addEventListener('input', () => {
      if (table.showAll) table.showAll();
      const words = input.value.trim().toLowerCase();
      let shown = 0;
      for (const row of rows) {
        if (row.classList.contains('g')) { row.hidden = words !== ''; continue; }
        row.hidden = words !== '' && !row.textContent.toLowerCase().includes(words);
        shown += row.hidden ? 0 : 1;
      }
      count.textContent = words === '' ? '' : shown + ' of ' + plain.length + ' rows';
    });
  }

  function openTarget() {
    const id = decodeURIComponent(location.hash.slice(1));
    let target = id && document.getElementById(id);
    if (!target) return;
    for (let each = target; each; each = each.parentElement) if (each.tagName === 'DETAILS') each.open = true;
    target.scrollIntoView();
  }

  function prepare(within) {
    for (const table of all('table', within)) {
      if (table.dataset.ready || !table.closest('.scroll')) continue;
      table.dataset.ready = 'yes';
      const rows = rowsOf(table);
      sortable(table, rows);
      shorten(table, rows);
    }
    const names = new Map();
    for (const region of all('.scroll[aria-label]', document)) {
      const name = region.dataset.name || region.getAttribute('aria-label');
      region.dataset.name = name;
      names.set(name, (names.get(name) || 0) + 1);
      if (names.get(name) > 1) region.setAttribute('aria-label', name + ' (' + names.get(name) + ')');
    }
  }

  let opened = [];
  window.addEventListener('beforeprint', () => { opened = all('details:not([open]):not(.nofold)'); opened.forEach(each => { each.open = true; }); });
  window.addEventListener('afterprint', () => { opened.forEach(each => { each.open = false; }); });
  window.addEventListener('hashchange', openTarget);
  prepare(document);
  openTarget();
  return { prepare };
})();
