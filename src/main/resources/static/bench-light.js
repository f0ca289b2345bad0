// What belongs together lights up together: point at it, or focus it. An element's data-of names it
// first and then what it belongs to; the server writes it.

let lit = [];
let pointed = null;
let focused = null;

const nameOf = text => text.split(' ', 1)[0];

function belongTo(element) {
  const own = new Set(element.dataset.of.split(' '));
  const name = nameOf(element.dataset.of);
  return [...document.querySelectorAll('.bench [data-of]')].filter(other => {
    const theirs = other.dataset.of;
    // What the pointer is within anyway says nothing, unless it is what is pointed at.
    return (` ${theirs} `.includes(` ${name} `) || own.has(nameOf(theirs)))
        && !(other !== element && other.contains(element))
        && !other.matches('.said');
  });
}

function light(element) {
  if (element !== pointed) {
    lightAnew(element);
  }
}

function lightAnew(element) {
  const before = lit;
  pointed = element;
  lit = element?.isConnected ? belongTo(element) : [];
  const now = new Set(lit);
  before.filter(other => !now.has(other)).forEach(other => other.classList.remove('lit'));
  lit.forEach(other => other.classList.add('lit'));
}

const within = target => target.closest?.('.bench [data-of]') ?? null;

document.addEventListener('pointerover', event => light(within(event.target) ?? focused));
document.addEventListener('focusin', event => light(focused = within(event.target)));
document.addEventListener('focusout', event => {
  if (!event.relatedTarget) {
    light(focused = null); // else what gets the focus says what is lit
  }
});

// --- the drawing by keyboard: one stop for the tab key, arrows go on from there ---

const PARTS = 'svg.block g[tabindex]';
const DIRECTIONS = {ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1]};

function stopAt(part) {
  for (const other of part.closest('svg').querySelectorAll('g[tabindex]')) {
    other.setAttribute('tabindex', other === part ? 0 : -1);
  }
}

function makeStops() {
  for (const svg of document.querySelectorAll('svg.block')) {
    const parts = [...svg.querySelectorAll('g[tabindex]')];
    if (parts.length && !parts.some(part => part.getAttribute('tabindex') === '0')) {
      stopAt(parts[0]);
    }
  }
}

const middle = element => {
  const {x, y, width, height} = (element.querySelector('circle, .body') ?? element)
      .getBoundingClientRect();
  return [x + width / 2, y + height / 2];
};

/** The nearest of some elements in a direction; what lies aside counts as farther. */
export function nearest(from, elements, [right, down]) {
  const [x, y] = middle(from);
  let best = null;
  let least = Infinity;
  for (const element of elements) {
    const [ex, ey] = middle(element);
    const ahead = (ex - x) * right + (ey - y) * down;
    const aside = Math.abs((ex - x) * down) + Math.abs((ey - y) * right);
    if (ahead > 1 && ahead + 3 * aside < least) {
      least = ahead + 3 * aside;
      best = element;
    }
  }
  return best;
}

export const directionOf = event =>
    event.altKey || event.ctrlKey || event.metaKey ? undefined : DIRECTIONS[event.key];

document.addEventListener('keydown', event => {
  const part = event.target.closest?.(PARTS);
  const direction = directionOf(event);
  if (!part || !direction || event.defaultPrevented) {
    return;
  }
  event.preventDefault();
  const next = nearest(part, part.closest('svg').querySelectorAll('g[tabindex]'), direction);
  if (next) {
    stopAt(next);
    next.focus();
  }
});
document.addEventListener('focusin', event => {
  const part = event.target.closest?.(PARTS);
  if (part) {
    stopAt(part);
  }
});

// --- answers: what was lit or focused and is drawn anew stays so ---

let heldFocus = null;

document.addEventListener('htmx:beforeSwap', () => {
  heldFocus = document.activeElement?.closest?.(PARTS)?.id ?? null;
  lightAnew(null);
});
document.addEventListener('htmx:afterSettle', () => {
  for (const said of document.querySelectorAll('.said[data-of]')) {
    said.closest('tbody').dataset.of = said.dataset.of; // of another name perhaps
  }
  makeStops();
  const again = heldFocus && document.getElementById(heldFocus);
  heldFocus = null;
  if (again && document.activeElement !== again) {
    again.focus({preventScroll: true});
  }
  lightAnew(focused = within(document.activeElement));
});
document.addEventListener('followed', () => {
  makeStops();
  lightAnew(pointed);
});

makeStops();
