// Swaps only what an answer moves: elements that say the same stay as they are, with what is typed,
// chosen, opened, scrolled and focused in them. It is the swap style "moved" of htmx. Of what the page
// holds already an answer brings only the place, as an empty template of the same id.

import {isChanged, saysSame, setText, textOf} from './bench-fields.js';

const FIELDS = 'input, select, textarea';

/** Whether the job was swapped: what was fetched of it on demand may be stale then. */
let isSwapped = false;

/** Whether an answer relied on something that the page does not hold. */
let isMissing = false;

function isSame(old, fresh) {
  return old.nodeName === fresh.nodeName && old.id === fresh.id
      && requests(old) === requests(fresh);
}

/** What htmx has bound to an element: it does not see when that changes. */
function requests(element) {
  return [...element.attributes]
      .filter(({name}) => name.startsWith('hx-') && name !== 'hx-swap-oob')
      .map(({name, value}) => `${name}=${value}`)
      .join('\n');
}

// --- what is out of sight follows when the page has been drawn ---

/** Behind the frame that shows the answer. */
const MOST_BEHIND_MS = 100;
const whenIdle = window.requestIdleCallback
    ? task => requestIdleCallback(task, {timeout: MOST_BEHIND_MS})
    : task => setTimeout(task, MOST_BEHIND_MS);

/** Parts that stand apart from what is seen. */
let outOfSight = new Set();

/** Those of them that an answer moves, with what it says of them. */
const postponed = new Map();

function isOutOfSight(part) {
  const {top, bottom} = part.getBoundingClientRect();
  return (bottom < 0 || top > innerHeight) && !part.contains(document.activeElement);
}

function follow() {
  outOfSight.clear();
  if (!postponed.size) {
    return;
  }
  const added = [];
  for (const [old, fresh] of postponed) {
    if (old.isConnected) {
      settle(old, fresh, added);
    }
  }
  postponed.clear();
  isMissing ||= relyOnMore(added);
  added.forEach(element => htmx.process(element));
  document.dispatchEvent(new Event('followed'));
  fetchMissing();
}

document.addEventListener('htmx:beforeOnLoad', () => {
  // Asked while nothing has moved yet: afterwards it would cost a layout.
  const hidden = [...document.getElementsByClassName('apart')].filter(isOutOfSight);
  follow();
  outOfSight = new Set(hidden);
});
window.addEventListener('beforeprint', follow);

/** Makes `old` say what `fresh` says; `added` gets the elements that are new. */
function settle(old, fresh, added) {
  if (outOfSight.has(old) && isSame(old, fresh)) {
    postponed.set(old, fresh);
    return;
  }
  if (old.isEqualNode(fresh) && !old.matches(FIELDS) && !old.querySelector(FIELDS)) {
    return;
  }
  const isDifferent = !isSame(old, fresh);
  if (!isDifferent && old.classList.contains('later') && 'loaded' in old.dataset) {
    return; // stays until it is fetched anew
  }
  if (isDifferent || old instanceof SVGElement) {
    replace(old, fresh, added);
    return;
  }
  if (old.matches(FIELDS)) {
    settleField(old, fresh);
  } else {
    settleAttributes(old, fresh);
    settleChildren(old, fresh, added);
  }
}

function settleAttributes(old, fresh) {
  for (const {name, value} of fresh.attributes) {
    const isUsers = name === 'open' && old.classList.contains('drawer');
    if (name !== 'class' && name !== 'hx-swap-oob' && !isUsers && old.getAttribute(name) !== value) {
      old.setAttribute(name, value);
    }
  }
  for (const {name} of [...old.attributes]) {
    const isUsers = name === 'open' && old.nodeName === 'DETAILS';
    if (name !== 'class' && !isUsers && !fresh.hasAttribute(name)) {
      old.removeAttribute(name);
    }
  }
  const busy = [...old.classList].filter(name => name.startsWith('htmx-'));
  const classes = [...fresh.classList, ...busy].join(' ');
  if (old.getAttribute('class') !== classes && (classes || old.hasAttribute('class'))) {
    old.setAttribute('class', classes);
  }
}

/** What was changed and is not sent yet stays: an answer knows nothing of that. */
function settleField(old, fresh) {
  const own = isChanged(old);
  const shown = textOf(old);
  settleAttributes(old, fresh);
  if (old.nodeName === 'SELECT') {
    if (hasSameOptions(old, fresh)) {
      [...old.options].forEach((option, i) =>
        option.defaultSelected = fresh.options[i].defaultSelected);
    } else {
      const chosen = fresh.value;
      old.replaceChildren(...fresh.childNodes);
      old.value = chosen;
    }
    old.value = own ? shown : fresh.options.length ? fresh.value : old.value;
  } else {
    // "9,5" stays as it was typed when the answer says 9.5.
    setText(old, own || saysSame(old, shown, textOf(fresh)) ? shown : textOf(fresh));
  }
}

function hasSameOptions(old, fresh) {
  return old.options.length === fresh.options.length
      && [...old.options].every((option, i) =>
          option.value === fresh.options[i].value && option.text === fresh.options[i].text);
}

function settleChildren(old, fresh, added) {
  const wanted = new Set([...fresh.children].map(child => child.id).filter(Boolean));
  const known = new Map([...old.children].filter(child => child.id).map(child => [child.id, child]));
  let at = old.firstChild;
  for (const child of [...fresh.childNodes]) {
    while (at && (at.id ? !wanted.has(at.id) : isBlankBefore(at, child))) {
      at = drop(at);
    }
    const match = child.id ? known.get(child.id) : isAlike(at, child) ? at : undefined;
    const isPlace = child.nodeName === 'TEMPLATE';
    if (!match) {
      isMissing ||= isPlace;
      old.insertBefore(child, at);
      if (child.nodeType === Node.ELEMENT_NODE) {
        added.push(child);
      }
      continue;
    }
    if (match !== at) {
      old.insertBefore(match, at);
    }
    at = match.nextSibling;
    if (isPlace) {
      continue;
    }
    if (match.nodeType === Node.ELEMENT_NODE) {
      settle(match, child, added);
    } else if (match.data !== child.data) {
      match.data = child.data;
    }
  }
  while (at) {
    at = drop(at);
  }
}

/** Whether there is an empty place of something held among what is new: it is not held then. */
const relyOnMore = added => added.some(element => element.querySelector('template'));

/** Blanks between rows stand in no answer's way. */
function isBlankBefore(old, fresh) {
  return old.nodeType === Node.TEXT_NODE && fresh.nodeType === Node.ELEMENT_NODE
      && !old.data.trim();
}

function isAlike(old, fresh) {
  return old && !old.id && old.nodeType === fresh.nodeType && old.nodeName === fresh.nodeName;
}

function drop(node) {
  const next = node.nextSibling;
  node.remove();
  return next;
}

function replace(old, fresh, added) {
  for (const details of fresh.querySelectorAll('details[id]')) {
    details.open ||= Boolean(old.querySelector(`#${CSS.escape(details.id)}`)?.open);
  }
  if (fresh.nodeName === 'DETAILS') {
    fresh.open ||= old.open;
  }
  fresh.removeAttribute('hx-swap-oob');
  old.replaceWith(fresh);
  added.push(fresh);
}

/** What is wrong with a field is told to those who do not see it, and never lies in a closed part. */
function pointAtFaults() {
  for (const fault of document.getElementsByClassName('fault')) {
    const field = document.getElementById(fault.id.replace(/-fault$/, ''));
    if (!fault.hasChildNodes()) {
      field?.removeAttribute('aria-invalid');
      continue;
    }
    field?.setAttribute('aria-invalid', 'true');
    const closed = fault.closest('details:not([open])');
    if (closed) {
      closed.open = true;
    }
  }
}

htmx.defineExtension('moved', {
  handleSwap(style, target, fragment) {
    if (style !== 'moved') {
      return false;
    }
    const added = [];
    const parts = [...fragment.children];
    if (parts.some(({id}) => id && id === target.id)) {
      isSwapped = true;
      for (const part of parts) {
        const old = document.getElementById(part.id);
        if (old) {
          settle(old, part, added);
        }
      }
    } else {
      settleChildren(target, fragment, added);
    }
    isMissing ||= relyOnMore(added);
    return added;
  },
});

document.addEventListener('htmx:oobBeforeSwap', event => {
  const {target, fragment} = event.detail;
  const fresh = fragment.firstElementChild;
  if (target.classList.contains('kept')) {
    // A field of a drawer that was not fetched yet.
    event.detail.shouldSwap = false;
    target.value = fresh.value;
  } else if (fresh && fresh.id === target.id) {
    event.detail.shouldSwap = false;
    const added = [];
    settle(target, fresh, added);
    added.forEach(element => htmx.process(element));
  }
});

document.addEventListener('htmx:afterSwap', event => {
  if (event.detail.target.classList.contains('later')) {
    event.detail.target.dataset.loaded = '';
  }
});

document.addEventListener('htmx:afterSettle', () => {
  outOfSight.clear();
  if (postponed.size) {
    requestAnimationFrame(() => whenIdle(follow));
  }
  pointAtFaults();
  if (!fetchMissing() && isSwapped) {
    for (const part of document.querySelectorAll('.later[data-loaded]')) {
      part.dataset.stale = '';
      fetchAnew(part);
    }
  }
  isSwapped = false;
});

/** Has the whole job fetched if an answer relied on what is not here; says whether it did. */
function fetchMissing() {
  const had = isMissing;
  isMissing = false;
  if (had) {
    htmx.trigger('#work', 'missing');
  }
  return had;
}

/** What stands closed is fetched when it opens. */
function fetchAnew(part) {
  if ('stale' in part.dataset && part.closest('details')?.open) {
    delete part.dataset.stale;
    htmx.trigger(part, 'refresh');
  }
}

document.addEventListener('toggle', event => {
  event.target.querySelectorAll?.('.later[data-stale]').forEach(fetchAnew);
}, true);
