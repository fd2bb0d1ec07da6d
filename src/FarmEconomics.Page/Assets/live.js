// The pages work without this; with it a changed field redraws the page at once, and a run of a notebook goes on beside it.

const one = (selector, within) => (within || document).querySelector(selector);
const all = (selector, within) => [...(within || document).querySelectorAll(selector)];

// Which page is shown; another place on it is no other page.
const place = () => location.pathname + location.search;
let shown = place();

function goTo(address) {
  history.pushState({}, '', address);
  shown = place();
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
  if (push) goTo(address);
  prepare(one('main'));
  bringAnew(one('main'));
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

// ---- A report: its fields are an address; a changed one brings the page anew, and a newer change calls the older one off ----

let asking = null;
// A field that goes with the page it stands on tells of a change nobody is done with.
let replacing = false;

async function redraw(form, push) {
  if (asking) asking.abort();
  const mine = asking = new AbortController();
  const values = new URLSearchParams();
  for (const [name, value] of new FormData(form)) values.set(name, value);
  // What is as it was needs no place in the address.
  for (const field of all('[data-default]', form)) if (values.get(field.name) === field.dataset.default) values.delete(field.name);
  const address = form.getAttribute('action') + (values.size ? '?' + values : '');
  delete form.dataset.typed;
  one('main').classList.add('busy');
  await bring(address, address, mine, push);
}

const fieldsOf = form => [...form.elements].filter(each => each.name && each.type !== 'hidden' && each.type !== 'submit');
const valueOf = field => field.type === 'checkbox' ? field.checked : field.value;

// The page comes while its reader goes on typing: what was typed since it was asked for stays, and is asked for with the next change
// or when its field is left.
function typedSince(asked) {
  const form = one('form[data-live]');
  return !form ? [] : fieldsOf(form).map(each => [each.name, valueOf(each)])
    .filter(([name, value]) => asked.has(name) && asked.get(name) !== value);
}

function typeAgain(typed) {
  const form = one('form[data-live]');
  if (!form) return;
  for (const [name, value] of typed) {
    const field = fieldsOf(form).find(each => each.name === name);
    if (!field) continue;
    if (field.type === 'checkbox') field.checked = value; else field.value = value;
    form.dataset.typed = 'yes';
  }
}

// A report that takes long comes as its last answer first: what was asked for is put in when it is there.
function bringAnew(within) {
  if (!one('[data-anew]', within)) return;
  if (asking) asking.abort();
  const mine = asking = new AbortController();
  const waiting = new URL(location.href);
  waiting.searchParams.set('_wait', '1');
  bring(location.href, waiting.href, mine, false);
}

async function bring(address, from, mine, push) {
  const main = one('main');
  const asked = new Map(all('form[data-live]').flatMap(fieldsOf).map(each => [each.name, valueOf(each)]));
  try {
    const answer = await fetch(from, { headers: { Accept: 'text/html' }, signal: mine.signal });
    const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
    const open = all('main details[open][id]').map(each => each.id);
    const focus = document.activeElement && document.activeElement.id;
    const typed = typedSince(asked);
    const at = scrollY;
    replacing = true;
    try { main.replaceWith(document.adoptNode(one('main', page))); } finally { replacing = false; }
    const tabs = one('header', page);
    if (tabs) one('header').replaceWith(document.adoptNode(tabs));
    document.title = page.title;
    for (const id of open) { const each = document.getElementById(id); if (each) each.open = true; }
    prepare(one('main'));
    scrollTo(0, at);
    const again = focus && document.getElementById(focus);
    if (again) again.focus({ preventScroll: true });
    typeAgain(typed);
    if (push) goTo(address);
    bringAnew(one('main'));
  } catch (fault) {
    if (fault.name !== 'AbortError') { main.classList.remove('busy'); alert(GONE); }
  }
}

// A list changes with every key typed into it ("2", "20", "202"): the page waits until the typing is over, or it would be redrawn under it.
const TYPING = 600;

// A crop whose new price nobody has typed yet changes nothing: who chose it isn't told what is missing before there was time for it.
function waits(field) {
  const other = field.dataset.waitsFor && document.getElementById(field.dataset.waitsFor);
  return other && other.value.trim() === '';
}

function liveForm(form) {
  let waiting = 0, keyed = -TYPING;
  const gone = () => replacing || !form.isConnected;
  const soon = () => { clearTimeout(waiting); waiting = setTimeout(() => { waiting = 0; redraw(form, true); }, TYPING); };
  form.addEventListener('submit', event => { event.preventDefault(); clearTimeout(waiting); redraw(form, true); });
  // A field whose text was put back tells of no change of its own.
  form.addEventListener('focusout', () => { if (form.dataset.typed && !waiting && !gone()) redraw(form, true); });
  form.addEventListener('keydown', event => {
    if (event.target.tagName !== 'SELECT') return;
    keyed = event.timeStamp;
    if (waiting) soon();
  });
  form.addEventListener('change', event => {
    if (gone() || waits(event.target)) return;
    if (event.target.tagName === 'SELECT' && event.timeStamp - keyed < TYPING) soon();
    else { clearTimeout(waiting); redraw(form, true); }
  });
}

// A file that is too large is told of before it is sent.
function fileField(field) {
  field.addEventListener('change', () =>
    field.setCustomValidity(field.files[0] && field.files[0].size > Number(field.dataset.most) ? field.dataset.tooLarge : ''));
}

function prepare(within) {
  farmPage.prepare(within);
  all('form[data-live]', within).forEach(liveForm);
  all('form[data-run]', within).forEach(form => form.addEventListener('submit', submit));
  all('[data-cancel]', within).forEach(form => form.addEventListener('submit', cancel));
  all('[data-most]', within).forEach(fileField);
  followShown(within);
}

function followShown(within) {
  const box = one('[data-working]', within);
  if (box && box.dataset.runId) {
    const address = location.href;
    follow(box.dataset.runId, async news => {
      if (news.page || news.state === 'done') { await putIn(address, false); } else { working(false, news.words); }
    });
  }
}

// Whoever goes back no longer waits for the page they left; what was typed stays while it is the same page.
window.addEventListener('popstate', () => {
  if (place() === shown) return;
  following = null;
  if (asking) asking.abort();
  shown = place();
  bring(location.href, location.href, asking = new AbortController(), false);
});
// Who leaves while an answer is waited for isn't told that the program is gone; who comes back waits again.
window.addEventListener('pagehide', () => { if (asking) asking.abort(); });
window.addEventListener('pageshow', event => { if (event.persisted) bringAnew(document); });
all('form[data-live]').forEach(liveForm);
all('form[data-run]').forEach(form => form.addEventListener('submit', submit));
all('[data-cancel]').forEach(form => form.addEventListener('submit', cancel));
all('[data-most]').forEach(fileField);
followShown(document);
bringAnew(document);
