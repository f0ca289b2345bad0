// Moving a device or relay to another position of a block: dragged, or picked up by keyboard. The
// server keeps it there, or says at the block why it cannot.

import {directionOf, nearest} from './bench-light.js';

const FAR = 4; // pixels from which on it is a drag and no click
const form = () => document.getElementById('job');
const word = () => document.getElementById('moved-word');

/** A text of the page, which comes in the reader's language, with values for {0}, {1}, ... */
const told = (name, ...values) => word().dataset[name].replace(/\{(\d)\}/g, (_, i) => values[i]);
const say = text => word().textContent = text;

/** The device under way: its element, the spot that it would go to, where the pointer took it. */
let moving = null;

const spots = () => [...document.querySelectorAll('svg.devices .spot')];
const blockOf = element => element.closest('svg').dataset;
const nameOf = spot => `${blockOf(spot).block}-${spot.dataset.position}`;

function holderOf(spot) {
  return [...spot.closest('svg').querySelectorAll('.seat')].find(seat => {
    const past = Number(spot.dataset.position) - Number(seat.dataset.position);
    return past >= 0 && past < Number(seat.dataset.width);
  });
}

function aim(spot) {
  moving.spot?.classList.remove('aim');
  moving.spot = spot;
  spot?.classList.add('aim');
}

function describe(spot) {
  const holder = holderOf(spot);
  return !holder ? told('free', nameOf(spot))
      : holder === moving.seat ? told('whereItIs', nameOf(spot))
      : told('holds', nameOf(spot), holder.dataset.what);
}

function take(seat) {
  moving = {seat, spot: null};
  seat.classList.add('taken');
  seat.setAttribute('aria-pressed', 'true');
}

function letGo() {
  aim(null);
  moving.seat.classList.remove('taken', 'moving');
  moving.seat.removeAttribute('aria-pressed');
  moving.seat.removeAttribute('transform');
  moving = null;
}

function setDown() {
  const {seat, spot} = moving;
  letGo();
  if (!spot || holderOf(spot) === seat) {
    say(told('stays', seat.dataset.what));
    return;
  }
  const from = blockOf(seat);
  const to = blockOf(spot);
  if (from.location !== to.location) {
    say(told('otherPlace', seat.dataset.what, nameOf(spot), to.block, to.location, from.location));
    return;
  }
  asked = {row: seat.dataset.row, what: seat.dataset.what, name: nameOf(spot)};
  htmx.ajax('POST', form().getAttribute('action'), {
    source: form(),
    target: '#work',
    swap: 'moved',
    values: {do: `place ${seat.dataset.row} ${spot.dataset.position} ${to.block}`},
  });
}

/** What was asked for last, told of when its answer is there. */
let asked = null;

function tellWhatWasAsked() {
  if (!asked) {
    return;
  }
  const {row, what, name} = asked;
  const placed = document.querySelector(`.placed[data-row="${row}"]`);
  if (placed) {
    asked = null;
    say(placed.classList.contains('fail')
        ? placed.querySelector('.told').textContent.trim()
        : told('sits', what, name));
    if (document.activeElement === document.body || document.activeElement?.closest('svg.block')) {
      document.querySelector(`svg.devices .seat[data-row="${row}"]`)?.focus({preventScroll: true});
    }
  }
}
document.addEventListener('htmx:afterSettle', tellWhatWasAsked);
document.addEventListener('followed', tellWhatWasAsked);

// --- by pointer ---

document.addEventListener('pointerdown', event => {
  const seat = event.target.closest?.('svg.devices .seat');
  if (seat && event.button === 0 && event.isPrimary && !moving) {
    take(seat);
    moving.from = [event.clientX, event.clientY];
    moving.pointer = event.pointerId;
  }
});

document.addEventListener('pointermove', event => {
  if (moving?.pointer !== event.pointerId) {
    return;
  }
  const [x, y] = moving.from;
  const [right, down] = [event.clientX - x, event.clientY - y];
  if (Math.hypot(right, down) < FAR && !moving.seat.classList.contains('moving')) {
    return;
  }
  event.preventDefault();
  const scale = moving.seat.closest('svg').viewBox.baseVal.width
      / moving.seat.closest('svg').getBoundingClientRect().width;
  moving.seat.classList.add('moving');
  moving.seat.setAttribute('transform', `translate(${right * scale} ${down * scale})`);
  aim(spotAt(event.clientX, event.clientY));
});

function spotAt(x, y) {
  return spots().find(spot => {
    const box = spot.getBoundingClientRect();
    return x >= box.left && x <= box.right && y >= box.top && y <= box.bottom;
  }) ?? null;
}

document.addEventListener('pointerup', event => {
  if (moving?.pointer === event.pointerId) {
    if (moving.seat.classList.contains('moving')) {
      setDown();
    } else {
      letGo();
    }
  }
});
document.addEventListener('pointercancel', event => {
  if (moving?.pointer === event.pointerId) {
    letGo();
  }
});

// --- by keyboard; before the arrows go from part to part ---

document.addEventListener('keydown', event => {
  const seat = event.target.closest?.('svg.devices .seat');
  if (moving && event.key === 'Escape') {
    event.preventDefault();
    const {what} = moving.seat.dataset;
    letGo();
    say(told('stays', what));
  } else if (seat && (event.key === ' ' || event.key === 'Enter')) {
    event.preventDefault();
    if (moving) {
      setDown();
    } else {
      take(seat);
      aim(spots().find(spot => holderOf(spot) === seat));
      say(told('pickedUp', seat.dataset.what));
    }
  } else if (moving?.spot && directionOf(event)) {
    event.preventDefault();
    const next = nearest(moving.spot, spots(), directionOf(event));
    if (next) {
      aim(next);
      next.scrollIntoView({block: 'nearest', inline: 'nearest'});
      say(describe(next));
    }
  }
}, true);
document.addEventListener('focusout', event => {
  if (moving && !moving.from && event.target === moving.seat) {
    letGo();
  }
});
document.addEventListener('htmx:beforeSwap', () => {
  if (moving) {
    letGo();
  }
});
