// Files are fetched by the page, so that one that takes long says so and can be stopped.

import {say} from './bench-fields.js';

const PATIENCE_MS = 1000;
const LINKS = '.job-links a[href$=".csv"], .job-links a[href$=".json"], .job-links a[href*=".pdf"]';

function nameOf(answer, link) {
  const told = answer.headers.get('Content-Disposition') ?? '';
  const coded = told.match(/filename\*=UTF-8''([^;]+)/i)?.[1];
  return coded ? decodeURIComponent(coded)
    : told.match(/filename="([^"]+)"/)?.[1] ?? link.pathname.split('/').at(-1);
}

function save(blob, name) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60000);
}

function slip(text, ...buttons) {
  const place = document.createElement('p');
  place.className = 'slip working';
  place.setAttribute('role', 'status');
  document.getElementById('tray').append(place);
  place.append(text, ...buttons.map(([label, action]) => {
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = label;
    button.addEventListener('click', () => {
      place.remove();
      action();
    });
    return button;
  }));
  return place;
}

async function fetchFile(link) {
  const stop = new AbortController();
  const what = link.getAttribute('aria-label') ?? link.textContent;
  let told = null;
  const timer = setTimeout(() => {
    told = slip(`${say('making', what)} `, [say('stop'), () => stop.abort()]);
  }, PATIENCE_MS);
  try {
    const answer = await fetch(link.href, {signal: stop.signal, headers: {Accept: '*/*'}});
    if (!answer.ok) {
      throw new Error(String(answer.status));
    }
    save(await answer.blob(), nameOf(answer, link));
  } catch (failure) {
    if (failure.name !== 'AbortError') {
      slip(`${say('failed', what)} `, [say('tryAgain'), () => fetchFile(link)], [say('putAway'), () => {}]);
    }
  } finally {
    clearTimeout(timer);
    told?.remove();
  }
}

document.addEventListener('click', event => {
  const link = event.target.closest?.(LINKS);
  if (link && event.button === 0 && !event.ctrlKey && !event.metaKey && !event.shiftKey && !event.altKey) {
    event.preventDefault();
    fetchFile(link);
  }
});
