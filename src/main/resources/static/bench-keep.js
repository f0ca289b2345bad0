// Sends what is changed, and keeps it in this browser until the service has it: through a dropped
// connection, a stop, a reload, and while others change the same job.

import {
  changedFields, form, isChanged, keptOf, say, sayMany, saysSame, setKept, setText, textOf,
} from './bench-fields.js';

const PATIENCE_MS = 1000;
const AWAY_MS = 3000;
const FIRST_RETRY_MS = 1000;
const LONGEST_RETRY_MS = 30000;
const MOST_TOLD = 3;

const path = () => form()?.getAttribute('action');
const shownIn = () => document.getElementById('shown-in')?.value ?? '';
const revision = () => Number(document.getElementById('from')?.value);
/** Whether a change is on its way: what is asked for meanwhile may be older than its answer. */
const isBusy = () => [...running.values()].some(({changes}) => changes);
const store = `unkept-${form()?.dataset.job}`;

/** Changes whose field is not on the page: each as {from, shownIn, fields}. */
let strays = [];

/** Fields that somebody else changed while they were typed in: what they started from. */
const started = new WeakMap();

/** What is under way: fields with the texts that were sent, and a name to stop it by. */
let sent = [];
let sentStray = null;
let edit = '';

// --- what a request says ---

document.addEventListener('htmx:configRequest', event => {
  const {verb, path: to, elt, parameters} = event.detail;
  if (verb !== 'post' || !to.startsWith(`${path()}`)) {
    return;
  }
  if (to === `${path()}/undo`) {
    takeFieldsOut(parameters);
  }
  if (to !== path()) {
    return;
  }
  if (elt.id === 'wants') {
    addState(parameters);
  }
  sent = [];
  sentStray = null;
  edit = `${Date.now().toString(36)}${Math.random().toString(36).slice(2)}`;
  parameters.set('edit', edit);
  if (['paste', 'take'].includes(parameters.get('do'))) {
    changedFields().forEach(field => sent.push({field, text: textOf(field)}));
    return;
  }
  takeFieldsOut(parameters);
  parameters.set('part', 'true');
  const lone = parameters.get('stray');
  if (lone) {
    sentStray = strays.find(one => JSON.stringify(one) === lone);
    parameters.delete('stray');
    parameters.delete('do');
    parameters.set('from', JSON.parse(lone).from);
    parameters.set('shownIn', JSON.parse(lone).shownIn);
    Object.entries(JSON.parse(lone).fields).forEach(([name, text]) => parameters.set(name, text));
  } else if (!elt.matches('[data-alone]')) {
    chooseFields(parameters);
  }
});

/** What the form says of itself: htmx would search the whole page for it. */
function addState(parameters) {
  const own = [...form().children].filter(({type}) => type === 'hidden');
  const opened = [...document.getElementsByName('open')].filter(field => field.form === form());
  for (const field of [...own, ...opened, document.getElementById('held')]) {
    parameters.append(field.name, field.value);
  }
}

/** Those of one revision at a time: the oldest first, the others follow. */
function chooseFields(parameters) {
  const changed = changedFields();
  const fromOf = field => started.get(field)?.from ?? revision();
  const from = Math.min(...changed.map(fromOf), revision());
  for (const field of changed.filter(field => fromOf(field) === from)) {
    parameters.set(started.get(field)?.name ?? field.name, textOf(field));
    sent.push({field, text: textOf(field)});
  }
  if (changed.length) {
    parameters.set('from', from);
  }
}

function takeFieldsOut(parameters) {
  for (const name of [...parameters.keys()]) {
    if (name.startsWith('/')) {
      parameters.delete(name);
    }
  }
}

const isEdit = detail => detail.requestConfig?.verb === 'post' && detail.requestConfig.path === path();

/** Before an answer is shown: what it has kept is no change any more. */
document.addEventListener('htmx:beforeSwap', event => {
  const {detail} = event;
  if (detail.requestConfig.path === `${path()}/now` && isBusy()) {
    detail.shouldSwap = false;
    return;
  }
  if (isEdit(detail) && detail.xhr.status < 300) {
    sent.forEach(({field, text}) => {
      setKept(field, text);
      started.delete(field);
    });
    strays = strays.filter(stray => stray !== sentStray);
  }
  if (detail.target?.id === 'work' || detail.xhr.getResponseHeader('HX-Retarget') === '#work') {
    liftChanges();
  }
});

document.addEventListener('htmx:afterRequest', event => {
  if (!isEdit(event.detail)) {
    refreshIfOlder();
    return;
  }
  const {xhr, successful} = event.detail;
  const isAnswered = xhr.status > 0 && xhr.status < 500;
  if (isAnswered) {
    trouble = null;
    event.detail.elt.closest('.clash')?.remove();
  }
  if (isAnswered && !successful && sentStray) {
    strays = strays.filter(stray => stray !== sentStray); // wrong by itself: its answer says why
  }
  const more = successful && (strays.length || changedFields().some(field => !sent.some(
      one => one.field === field) && field !== document.activeElement));
  sent = [];
  save();
  showUnkept();
  if (more) {
    setTimeout(send);
  } else {
    refreshIfOlder();
  }
});

// --- sending ---

function send() {
  if (strays.length) {
    htmx.ajax('POST', path(), {
      source: form(),
      target: '#work',
      swap: 'moved',
      values: {stray: JSON.stringify(strays[0])},
    }).catch(() => {}); // told of by its event
  } else if (changedFields().length) {
    htmx.trigger('#wants', 'resend');
  }
}

/** A text that was put back by script does not tell by itself that it was changed. */
document.addEventListener('focusout', event => {
  if (restored.has(event.target)) {
    restored.delete(event.target);
    if (isChanged(event.target)) {
      event.target.dispatchEvent(new Event('change', {bubbles: true}));
    }
  }
});

document.addEventListener('change', event => {
  if (event.target.form === form() && event.target.name?.startsWith('/')) {
    save();
  }
});

// --- kept in this browser until the service has it ---

const stray = (from, fields) => ({from, shownIn: shownIn(), fields});

function groups() {
  const found = new Map();
  for (const field of changedFields()) {
    const {from, name} = started.get(field) ?? {from: revision(), name: field.name};
    found.set(from, {...found.get(from), [name]: textOf(field)});
  }
  return [...[...found].map(([from, fields]) => stray(from, fields)), ...strays];
}

function save() {
  const unkept = groups();
  try {
    if (unkept.length) {
      localStorage.setItem(store, JSON.stringify(unkept));
    } else if (localStorage.getItem(store) !== null) {
      localStorage.removeItem(store);
    }
  } catch {
    // No room, or not allowed: the page itself still has them.
  }
}

function restore() {
  let unkept = [];
  try {
    unkept = JSON.parse(localStorage.getItem(store) ?? '[]');
  } catch {
    // Nothing that this page has written.
  }
  for (const {from, shownIn: units, fields} of unkept) {
    const lone = {};
    for (const [name, text] of Object.entries(fields)) {
      const field = from === revision() && units === shownIn() ? fieldNamed(name) : null;
      if (field) {
        setText(field, text);
      } else {
        lone[name] = text;
      }
    }
    if (Object.keys(lone).length) {
      strays.push({from, shownIn: units, fields: lone});
    }
  }
  if (unkept.length) {
    showUnkept();
    send();
  }
}

const fieldNamed = name => [...form().elements].findLast(
    field => field.name === name && (field.type !== 'hidden'));

// --- no answer ---

let trouble = null;

document.addEventListener('htmx:sendError', event => lost(event.detail));
document.addEventListener('htmx:timeout', event => lost(event.detail));
document.addEventListener('htmx:responseError', event => {
  const {status} = event.detail.xhr;
  if (status >= 500) {
    lost(event.detail);
  } else if (event.detail.requestConfig.verb === 'post') {
    document.getElementById('notice').textContent = say('refused', status);
  }
});

function lost(detail) {
  if (detail.requestConfig?.verb !== 'post' || !detail.requestConfig.path.startsWith(path())) {
    return;
  }
  const wait = Math.min(trouble ? trouble.wait * 2 : FIRST_RETRY_MS, LONGEST_RETRY_MS);
  clearTimeout(trouble?.timer);
  const label = detail.elt.matches('button') ? detail.elt.textContent.trim() : '';
  trouble = {wait, label: label || trouble?.label, timer: setTimeout(send, wait)};
  showUnkept();
}

window.addEventListener('online', () => trouble && send());

/** Says how many changes are not kept, and why; nothing when all are. */
function showUnkept() {
  const place = document.getElementById('unkept');
  const many = groups().reduce((sum, {fields}) => sum + Object.keys(fields).length, 0);
  const words = [];
  const buttons = [];
  if (trouble?.label) {
    words.push(say('notDone', trouble.label));
  }
  if (many && (trouble || away)) {
    words.push(sayMany('lost', many));
    buttons.push([say('sendNow'), send]);
  } else if (many && stopped) {
    words.push(sayMany('stopped', many));
    buttons.push([say('sendAgain'), send], [say('putBack'), putBack]);
  } else if (away) {
    words.push(say('away'));
  }
  if (!many) {
    stopped = false;
  }
  const text = words.join(' ');
  if (place.dataset.text !== text) {
    place.dataset.text = text;
    place.replaceChildren(text, ...buttons.map(([label, action]) => {
      const button = document.createElement('button');
      button.type = 'button';
      button.textContent = label;
      button.addEventListener('click', action);
      return button;
    }));
  }
  place.hidden = !text;
}

function putBack() {
  changedFields().forEach(field => {
    setText(field, keptOf(field));
    started.delete(field);
  });
  strays = [];
  save();
  showUnkept();
}

// --- work that takes longer than a second says so, and can be stopped ---

const running = new Map();
let stopped = false;

document.addEventListener('htmx:beforeSend', event => {
  running.set(event.detail.xhr, {
    edit: isEdit(event.detail) ? edit : '',
    changes: isEdit(event.detail) || event.detail.requestConfig.path.endsWith('/undo'),
    timer: setTimeout(() => showWorking(true), PATIENCE_MS),
  });
});
document.addEventListener('htmx:afterRequest', event => {
  clearTimeout(running.get(event.detail.xhr)?.timer);
  running.delete(event.detail.xhr);
  if (running.size === 0) {
    showWorking(false);
  }
});
document.addEventListener('click', event => {
  if (event.target.id === 'stop') {
    for (const [xhr, work] of [...running]) {
      xhr.abort();
      if (work.edit) {
        stopped = true;
        fetch(`${path()}/stop`, {
          method: 'POST', body: new URLSearchParams({edit: work.edit}),
          headers: JSON.parse(document.body.getAttribute('hx-headers') ?? '{}'),
        })
            .catch(() => {});
      }
    }
    showUnkept();
  } else if (event.target.matches?.('[data-put-away]')) {
    event.preventDefault();
    event.target.closest('.slip').remove();
  }
});

function showWorking(shown) {
  const working = document.getElementById('working');
  if (working && working.hidden === shown) {
    working.hidden = !shown;
  }
}

// --- changes of others ---

let newest = 0;
let away = false;
let awayTimer = 0;
let events = null;

function listen() {
  if (events || document.hidden || !form()) {
    return;
  }
  events = new EventSource(`${path()}/live`);
  events.addEventListener('open', () => {
    clearTimeout(awayTimer);
    awayTimer = 0;
    away = false;
    showUnkept();
    if (trouble || strays.length) {
      send();
    }
  });
  events.addEventListener('revision', event => {
    newest = Number(event.data);
    refreshIfOlder();
  });
  events.addEventListener('gone', () => {
    document.getElementById('notice').textContent = say('deleted');
    stopListening();
  });
  events.addEventListener('error', () => {
    awayTimer ||= setTimeout(() => {
      away = true;
      showUnkept();
    }, AWAY_MS);
    if (events?.readyState === EventSource.CLOSED) {
      stopListening();
      setTimeout(listen, AWAY_MS);
    }
  });
}

function stopListening() {
  events?.close();
  events = null;
}

function refreshIfOlder() {
  if (newest > revision() && !isBusy()) {
    refresh();
  }
}

/** Brings the whole sheet as it is by now. */
function refresh() {
  if (refresh.busy) {
    return;
  }
  refresh.busy = true;
  const open = [...document.querySelectorAll('#job [name="open"]')].map(({value}) => value);
  htmx.ajax('GET', `${path()}/now`, {
    source: document.getElementById('work'),
    target: '#work',
    swap: 'moved',
    values: {from: revision(), open},
  }).catch(() => {}).finally(() => {
    refresh.busy = false;
  });
}

document.addEventListener('missing', refresh);
document.addEventListener('visibilitychange', () => document.hidden ? stopListening() : listen());
window.addEventListener('pagehide', stopListening);
window.addEventListener('pageshow', listen);

// --- an answer that brings the whole sheet: rows may stand elsewhere, what is typed goes with them ---

let lifted = [];
const restored = new WeakSet();

/** The row that a field belongs to: what it is called, and the field within. */
function placeOf(field) {
  const row = field.closest('tbody[data-of]');
  return row && field.name.match(/^\/(?:circuits|feeds)\/\d+\/(.*)$/)
    ? {row: row.dataset.of, within: RegExp.$1, list: field.name.split('/')[1]}
    : {row: '', name: field.name};
}

function fieldAt({row, within, name, list}) {
  if (!row) {
    return fieldNamed(name);
  }
  const body = [...document.querySelectorAll(`#${list} tbody[data-of]`)]
      .find(({dataset}) => dataset.of === row);
  const index = body?.id.match(/\d+$/)?.[0];
  return index === undefined ? undefined : fieldNamed(`/${list}/${index}/${within}`);
}

function liftChanges() {
  const focused = document.activeElement;
  const fields = new Set(changedFields());
  if (focused?.form === form() && focused.name?.startsWith('/')) {
    fields.add(focused);
  }
  lifted = [...fields].map(field => ({
    place: placeOf(field),
    text: textOf(field),
    kept: keptOf(field),
    changed: isChanged(field),
    from: started.get(field)?.from ?? revision(),
    name: started.get(field)?.name ?? field.name,
    field,
    caret: field === focused && typeof field.selectionStart === 'number'
      ? [field.selectionStart, field.selectionEnd] : null,
    focused: field === focused,
  }));
  for (const {field, kept, changed} of lifted) {
    if (changed) {
      setText(field, kept);
      started.delete(field);
    }
  }
}

document.addEventListener('htmx:afterSwap', event => {
  if (event.detail.target.id !== 'work') {
    return;
  }
  const putDown = lifted;
  lifted = [];
  putDown.forEach(settleLifted);
  save();
  if (strays.length) {
    setTimeout(send);
  }
});

function settleLifted({place, text, kept, changed, from, name, field: old, caret, focused}) {
  const field = fieldAt(place);
  if (!field) {
    if (changed) {
      strays.push(stray(from, {[name]: text}));
    }
    return;
  }
  if (changed) {
    const isTheirs = !saysSame(field, keptOf(field), kept);
    setText(field, text);
    if (isTheirs && isChanged(field)) {
      started.set(field, {from, name});
    }
    if (focused) {
      restored.add(field);
    } else if (isTheirs && isChanged(field)) {
      strays.push(stray(from, {[name]: text}));
      setText(field, keptOf(field));
      started.delete(field);
    }
  }
  if (focused && (field !== old || document.activeElement !== field)) {
    field.focus({preventScroll: true});
  }
  if (focused && caret && field.type !== 'checkbox') {
    field.setSelectionRange(...caret);
  }
}

/** Only the last few things that others did stay in sight; the revisions have them all. */
document.addEventListener('htmx:oobAfterSwap', event => {
  const {target} = event.detail;
  if (target.id === 'meanwhile') {
    while (target.children.length > MOST_TOLD) {
      target.firstElementChild.remove();
    }
    tidy(target);
  } else if (target.id === 'clashes') {
    const seen = new Set();
    for (const clash of [...target.children].reverse()) {
      if (seen.has(clash.id)) {
        clash.remove();
      }
      seen.add(clash.id);
    }
  }
});

/** A button to put away what was told, once there is something. */
function tidy(place) {
  place.querySelector('[data-clear]')?.remove();
  const button = document.createElement('button');
  button.type = 'button';
  button.dataset.clear = '';
  button.textContent = say('putAway');
  button.addEventListener('click', () => place.replaceChildren());
  place.append(button);
}

if (form()) {
  const {searchParams} = new URL(location.href);
  if (searchParams.has('restored')) {
    history.replaceState(null, '', location.pathname);
  }
  // After htmx has seen the form, which it does then too.
  document.addEventListener('DOMContentLoaded', restore);
  listen();
}
