'use strict';
// The pages work without this; with it a run goes on beside the page, tables sort and filter, and answers come in by themselves.

const one = (selector, within) => (within || document).querySelector(selector);
const all = (selector, within) => [...(within || document).querySelectorAll(selector)];

// ---- Tables: sort by a heading, filter by words ----

function prepareTables(within) {
  for (const table of all('table', within)) {
    const body = table.tBodies[0];
    if (!body || table.dataset.ready) continue;
    table.dataset.ready = 'yes';
    const original = [...body.rows];
    const headings = table.tHead ? [...table.tHead.rows[0].cells] : [];
    if (original.some(row => row.cells.length !== headings.length)) continue;
    // Assumptions and statements stand in an order of their own and are left in it.
    if (original.length < 4 || !headings.some(heading => heading.classList.contains('num')) || table.dataset.order === 'kept') continue;
    headings.forEach((heading, column) => {
      const button = document.createElement('button');
      button.type = 'button';
      button.className = 'sort';
      button.append(...heading.childNodes);
      heading.append(button);
      button.addEventListener('click', () => sort(table, original, headings, column));
    });
    if (original.length > 8) addFilter(table, body, original);
  }
}

function sort(table, original, headings, column) {
  const heading = headings[column];
  const numeric = heading.classList.contains('num');
  const was = heading.getAttribute('aria-sort');
  const first = numeric ? 'descending' : 'ascending';
  const second = numeric ? 'ascending' : 'descending';
  const now = was === first ? second : was === second ? null : first;
  headings.forEach(each => each.removeAttribute('aria-sort'));
  const rows = [...original];
  if (now) {
    heading.setAttribute('aria-sort', now);
    const sign = now === 'ascending' ? 1 : -1;
    const key = row => {
      const cell = row.cells[column];
      return numeric ? (cell.dataset.value === undefined ? null : Number(cell.dataset.value)) : cell.textContent.trim();
    };
    rows.sort((a, b) => {
      const x = key(a), y = key(b);
      // What is not available stands last either way.
      if (x === null || y === null) return (x === null) - (y === null);
      return sign * (numeric ? x - y : x.localeCompare(y));
    });
  }
  table.tBodies[0].append(...rows);
}

let filters = 0;

function addFilter(table, body, original) {
  const id = `filter-${++filters}`;
  const box = document.createElement('div');
  box.className = 'filter';
  const label = document.createElement('label');
  label.htmlFor = id;
  label.textContent = 'Show only rows with';
  const input = document.createElement('input');
  input.id = id;
  input.type = 'search';
  input.autocomplete = 'off';
  const count = document.createElement('span');
  count.className = 'count';
  count.setAttribute('role', 'status');
  box.append(label, input, count);
  const holder = table.closest('.scroll') || table;
  holder.before(box);
  input.addEventListener('input', () => {
    const words = input.value.trim().toLowerCase();
    let shown = 0;
    for (const row of original) {
      row.hidden = words !== '' && !row.textContent.toLowerCase().includes(words);
      shown += row.hidden ? 0 : 1;
    }
    count.textContent = words === '' ? '' : `${shown} of ${original.length} rows; totals are of all`;
  });
}

// A region that scrolls is named by its table's caption; of several with the same, each gets its number.
function nameRegions(within) {
  const used = new Map();
  all('.scroll', within).forEach(region => {
    const caption = one('caption', region);
    const name = caption ? caption.textContent.trim() : 'Table';
    const count = (used.get(name) || 0) + 1;
    used.set(name, count);
    region.setAttribute('aria-label', count === 1 ? name : `${name} (${count})`);
  });
}

// ---- A run: started by the form, told of as it goes, its page put in when it is ready ----

let following = null;

function working(on, words, run) {
  const box = one('[data-working]');
  if (!box) return;
  box.hidden = words === '';
  one('progress', box).hidden = !on;
  // Nothing can be called off before the run has a name: a click would go nowhere.
  one('[data-cancel]', box).hidden = !on || !run;
  if (run) one('[data-cancel]', box).action = `/runs/${run}/cancel`;
  one('[data-words]', box).textContent = words;
  const result = one('[data-result]');
  if (result) result.classList.toggle('stale', on);
  const submit = one('form[data-run] button[type=submit]');
  if (submit) submit.disabled = on;
}

// Asked for again and again, over connections that end: a browser keeps few open to one address, and one held open for every
// answer would leave none for the next page.
const GONE = 'The program does not answer any more. Is it still running? Start it again, then load this page again.';
const pause = milliseconds => new Promise(done => setTimeout(done, milliseconds));

async function ask(run) {
  for (let tries = 0; tries < 5; tries++) {
    try {
      const answer = await fetch(`/runs/${run}`);
      if (answer.ok) return await answer.json();
      if (answer.status === 404) return null;
    } catch { /* asked again below */ }
    await pause(500);
  }
  return null;
}

async function follow(run, whenDone) {
  following = run;
  for (;;) {
    const news = await ask(run);
    if (following !== run) return;
    if (!news) { working(false, GONE); return; }
    if (news.ended) { whenDone(news); return; }
    const bar = one('[data-working] progress');
    if (bar) { bar.max = Math.max(news.of, 1); bar.value = news.cell; }
    working(true, news.words, run);
    await pause(120);
  }
}

async function putIn(address, push) {
  const answer = await fetch(address, { headers: { Accept: 'text/html' } });
  const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
  one('main').replaceWith(document.adoptNode(one('main', page)));
  document.title = page.title;
  if (push) history.pushState({}, '', address);
  prepare(one('main'));
}

function showFaults(form, faults, line) {
  const box = one('[data-faults]', form);
  const names = Object.keys(faults);
  box.hidden = names.length === 0;
  if (line) one('p', box).textContent = line;
  for (const field of all('.field', form)) {
    const input = one('input:not([type=hidden]), select, textarea', field);
    const fault = faults[input.name];
    one('.fault', field).textContent = fault || '';
    one('.fault', field).hidden = !fault;
    if (fault) { input.setAttribute('aria-invalid', 'true'); const group = input.closest('details'); if (group) group.open = true; } else input.removeAttribute('aria-invalid');
  }
  if (names.length) { const first = one('[aria-invalid=true]', form); if (first) first.focus(); }
}

async function submit(event) {
  event.preventDefault();
  const form = event.target;
  working(true, 'Starting…');
  let answer;
  try {
    answer = await fetch(form.action, { method: 'POST', headers: { Accept: 'application/json' }, body: new URLSearchParams(new FormData(form)) });
  } catch {
    working(false, GONE);
    return;
  }
  if (answer.status === 422) {
    const told = await answer.json();
    working(false, '');
    showFaults(form, told.faults, told.line);
    return;
  }
  if (!answer.ok) { working(false, await answer.text()); return; }
  showFaults(form, {}, '');
  const started = await answer.json();
  follow(started.run, async news => {
    if (news.state === 'done') {
      const focus = document.activeElement && document.activeElement.id;
      await putIn(started.address, true);
      // The records changed meanwhile, so that the page is being worked out again: it is put in when it is there.
      if (one('[data-working]').dataset.runId) return;
      working(false, 'Done: the page below is the new one.');
      const again = focus && document.getElementById(focus);
      (again || one('form[data-run] button[type=submit]')).focus({ preventScroll: true });
    } else {
      working(false, news.words + (one('[data-result]') ? ' Below stands the page as it was.' : ''));
    }
  });
}

async function cancel(event) {
  event.preventDefault();
  await fetch(event.target.action, { method: 'POST', headers: { Accept: 'application/json' } });
}

// ---- The first page: answers come in as they are worked out ----

async function awaitAnswers(boxes) {
  let waiting = boxes;
  while (waiting.length > 0) {
    for (const box of waiting) {
      const run = box.dataset.answer;
      const news = await ask(run);
      if (!box.isConnected) return;
      if (news && !news.ended) { const words = one('.hint', box); if (words && words.textContent !== news.words) words.textContent = news.words; continue; }
      delete box.dataset.answer;
      if (!news) continue;
      const answer = await fetch(`/runs/${run}/answer`);
      const part = new DOMParser().parseFromString(await answer.text(), 'text/html');
      box.replaceWith(document.adoptNode(part.body.firstElementChild));
    }
    waiting = waiting.filter(box => box.isConnected && box.dataset.answer);
    await pause(400);
  }
}

function prepare(within) {
  prepareTables(within);
  nameRegions(within);
  all('form[data-run]', within).forEach(form => form.addEventListener('submit', submit));
  all('[data-cancel]', within).forEach(form => form.addEventListener('submit', cancel));
  awaitAnswers(all('[data-answer]', within));
  const box = one('[data-working]', within);
  if (box && box.dataset.runId) {
    const address = location.href;
    follow(box.dataset.runId, async news => {
      if (news.page || news.state === 'done') { await putIn(address, false); } else { working(false, news.words); }
    });
  }
}

// Whoever goes back no longer waits for the page they left.
window.addEventListener('popstate', () => { following = null; putIn(location.href, false); });
prepare(document);
