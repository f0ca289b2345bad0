// The rows of the job's page by keyboard: moving, adding, undo and redo, copy and paste of rows.

const form = () => document.getElementById('job');
const LINES = '.rows tr.line';

// --- moving ---

/** The field of a line in a column; a line of a further load has not all of them. */
function fieldIn(line, column) {
  return line.querySelector(column === 'pick' ? '.picked' : `td.${column} :is(input, select)`);
}

function columnOf(field) {
  const cell = field.closest('td.cell, th.pick');
  return cell.classList.contains('pick') ? 'pick' : cell.classList.item(1);
}

function isCell(element) {
  return element instanceof HTMLElement && Boolean(element.closest(`${LINES} :is(td.cell, th.pick)`));
}

function enter(field) {
  field.focus();
  if (field instanceof HTMLInputElement && field.type !== 'checkbox') {
    field.select();
  }
}

function below(field, step) {
  const lines = [...field.closest('table').querySelectorAll('tr.line')];
  const column = columnOf(field);
  let at = lines.indexOf(field.closest('tr.line')) + step;
  while (lines[at] && !fieldIn(lines[at], column)) {
    at += step;
  }
  return lines[at] && fieldIn(lines[at], column);
}

function beside(field, step) {
  const fields = [...field.closest('tr.line').querySelectorAll(':is(td.cell, th.pick) :is(input, select)')];
  return fields[fields.indexOf(field) + step];
}

/** Whether the caret can go no further to one side; all selected counts as both ends. */
function isAtEnd(field, step) {
  if (!(field instanceof HTMLInputElement) || field.type === 'checkbox') {
    return true;
  }
  const {selectionStart, selectionEnd, value} = field;
  return selectionStart === 0 && selectionEnd === value.length
      || selectionStart === selectionEnd && selectionStart === (step < 0 ? 0 : value.length);
}

const STEPS = {ArrowUp: -1, ArrowDown: 1, ArrowLeft: -1, ArrowRight: 1};

function moveByArrow(event) {
  const step = STEPS[event.key];
  const field = event.target;
  const across = event.key === 'ArrowLeft' || event.key === 'ArrowRight';
  if (!step || event.altKey || event.shiftKey || event.ctrlKey || event.metaKey
      || across && !isAtEnd(field, step)) {
    return;
  }
  event.preventDefault();
  const next = across ? beside(field, step) : below(field, step);
  if (next) {
    enter(next);
  }
}

/** The column to go to in the circuit that is being added. */
let columnOfNew = 'title';

function moveByEnter(event) {
  if (event.key !== 'Enter' || event.altKey || event.ctrlKey || event.metaKey || event.isComposing) {
    return;
  }
  event.preventDefault();
  const field = event.target;
  const next = below(field, event.shiftKey ? -1 : 1);
  if (next) {
    enter(next);
  } else if (!event.shiftKey && field.closest('#circuits')) {
    columnOfNew = columnOf(field) === 'pick' ? 'title' : columnOf(field);
    field.blur(); // what was typed is kept first
    form().querySelector('button[value="add /circuits"]').click();
  } else {
    field.blur();
    enter(field);
  }
}

document.addEventListener('keydown', event => {
  if (isCell(event.target) && !event.isComposing) {
    moveByArrow(event);
    moveByEnter(event);
  }
});

/** After a row came or went, the focus stands where the next thing is typed. */
document.addEventListener('htmx:afterSettle', event => {
  const action = event.detail.requestConfig?.elt?.value ?? '';
  const rows = [...document.querySelectorAll('#circuits .circuit')];
  if (action === 'add /circuits' && rows.length) {
    enter(fieldIn(rows.at(-1), columnOfNew));
    columnOfNew = 'title';
  } else if (action === 'add /feeds') {
    enter(fieldIn([...document.querySelectorAll('#feeds .line')].at(-1), 'title'));
  } else if (/^add .*\/loads$/.test(action)) {
    const row = document.getElementById(`row${action.slice(4, -6).replaceAll('/', '-')}`);
    enter(fieldIn([...row.querySelectorAll('tr.line')].at(-1), 'title'));
  } else if (/^remove \/circuits\/\d+$/.test(action) && rows.length) {
    enter(fieldIn(rows[Math.min(Number(action.match(/\d+/)[0]), rows.length - 1)], 'title'));
  }
});

// --- undo and redo: of the revisions that were made here, each by itself ---

const trail = `steps-${form()?.dataset.job}`;
const steps = JSON.parse(sessionStorage.getItem(trail) ?? 'null') ?? {undo: [], redo: []};
let noted = 0;
let going = null;
let waiting = 0;
let typing = null;

function noteRevision() {
  const made = Number(document.getElementById('from')?.dataset.made);
  if (made && made !== noted && made !== steps.undo.at(-1)) {
    noted = made;
    if (going) {
      steps[going.step < 0 ? 'redo' : 'undo'].push(made);
    } else {
      steps.undo.push(made);
      steps.redo = [];
    }
  }
  sessionStorage.setItem(trail, JSON.stringify(steps));
  showSteps();
}

function showSteps() {
  for (const way of ['undo', 'redo']) {
    const button = document.getElementById(way);
    if (button) {
      button.disabled = steps[way].length === 0;
    }
  }
  showPicked();
}

/** Takes one step back or forth; waits while a change is on its way. */
function go(step) {
  if (form().classList.contains('htmx-request')) {
    waiting = step;
    return;
  }
  const made = steps[step < 0 ? 'undo' : 'redo'].at(-1);
  if (made === undefined || going) {
    return;
  }
  going = {step, made};
  htmx.ajax('POST', `${form().getAttribute('action')}/undo`, {
    source: form(),
    target: '#work',
    swap: 'moved',
    values: {made},
  }).catch(() => {}); // told of by its event
}

document.addEventListener('htmx:afterSettle', () => showSteps());
document.addEventListener('htmx:afterRequest', event => {
  const {requestConfig, successful} = event.detail;
  if (going && requestConfig?.path.endsWith('/undo')) {
    if (successful) {
      steps[going.step < 0 ? 'undo' : 'redo'].pop();
      noteRevision();
    }
    going = null;
  } else if (requestConfig?.verb === 'post') {
    noteRevision();
  }
  if (waiting) {
    const step = waiting;
    waiting = 0;
    setTimeout(() => go(step));
  }
});
document.addEventListener('input', event => typing = event.target);
document.addEventListener('change', () => typing = null);
document.addEventListener('focusin', () => typing = null);

document.addEventListener('keydown', event => {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) {
    return;
  }
  const key = event.key.toLowerCase();
  const step = key === 'z' ? (event.shiftKey ? 1 : -1) : key === 'y' ? 1 : 0;
  // Within a text that is still being typed the browser's own undo is the one that is meant.
  if (step && typing !== event.target && event.target.nodeName !== 'TEXTAREA') {
    event.preventDefault();
    go(step);
  }
});

document.addEventListener('click', event => {
  if (event.target.id === 'undo') {
    go(-1);
  } else if (event.target.id === 'redo') {
    go(1);
  } else if (event.target.id === 'copy') {
    document.execCommand('copy');
  }
});

// --- picking and copying rows ---

const picks = () => [...document.querySelectorAll('#circuits .picked')];
let lastPicked = null;

document.addEventListener('click', event => {
  const pick = event.target;
  if (!pick.matches?.('.picked')) {
    return;
  }
  if (event.shiftKey && lastPicked?.isConnected) {
    const all = picks();
    const [from, to] = [all.indexOf(lastPicked), all.indexOf(pick)].sort((a, b) => a - b);
    all.slice(from, to + 1).forEach(other => other.checked = pick.checked);
  }
  lastPicked = pick;
  showPicked();
});

function showPicked() {
  const many = picks().filter(pick => pick.checked).length;
  const button = document.getElementById('copy');
  if (button) {
    button.disabled = many === 0;
    document.getElementById('picked-many').textContent = many || '';
  }
  picks().forEach(pick => pick.closest('.circuit').classList.toggle('is-picked', pick.checked));
}

// Neither picks nor what waits to be confirmed are part of the job.
document.addEventListener('change', event => {
  if (event.target.matches('.picked') || event.target.closest('#wishes')) {
    event.stopPropagation();
  }
}, true);

/** A text as one cell; one that a spreadsheet could take for a formula gets an apostrophe. */
function cellText(text) {
  const safe = /^[=+\-@]/.test(text) ? `'${text}` : text;
  return /[\t\n\r"]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

const shortName = field => field.name.replace(/^\/circuits\/\d+\//, '');

function table(circuits) {
  const shown = [...document.querySelectorAll('#circuits thead th')].slice(1, 9)
      .map(th => th.textContent.trim());
  const names = ['title', 'loads/0/kind', 'loads/0/count', 'loads/0/amount', 'loads/0/unit', 'runM',
    'feed', 'location'];
  const more = [];
  for (const field of circuits.flatMap(row => [...row.querySelectorAll('.drawer [name]')])) {
    const name = shortName(field);
    if (textOf(field) && !more.includes(name) && name !== 'id' && !/^loads\/[1-9]/.test(name)
        && field.nodeName !== 'BUTTON') {
      more.push(name);
    }
  }
  const {line: first, circuit, load, length} = document.getElementById('circuits').dataset;
  const heading = name => name.endsWith('M') ? `${name}, ${length}` : name;
  const lines = [[first, ...shown, ...more.map(heading)]];
  for (const row of circuits) {
    const texts = new Map([...row.querySelectorAll('[name]')].map(f => [shortName(f), textOf(f)]));
    lines.push([circuit, ...[...names, ...more].map(name => texts.get(name) ?? '')]);
    row.querySelectorAll('tr.load').forEach((line, i) => {
      const own = name => texts.get(name.replace('loads/0/', `loads/${i + 1}/`)) ?? '';
      lines.push([
        load, texts.get(`loads/${i + 1}/title`) ?? '',
        ...names.slice(1, 5).map(own), texts.get(`loads/${i + 1}/branchM`) ?? '', '', '',
        ...more.map(name => name.startsWith('loads/0/') && name !== 'loads/0/title'
            && name !== 'loads/0/branchM' ? own(name) : ''),
      ]);
    });
  }
  return lines.map(line => line.map(cellText).join('\t')).join('\n') + '\n';
}

function textOf(field) {
  return field.type === 'checkbox' ? (field.checked ? field.value : '')
      : field.type === 'hidden' && !field.classList.contains('kept') ? '' : field.value;
}

document.addEventListener('copy', event => {
  const circuits = picks().filter(pick => pick.checked).map(pick => pick.closest('.circuit'));
  const {selectionStart, selectionEnd} = document.activeElement ?? {};
  const isText = document.activeElement?.type !== 'checkbox' && selectionStart !== selectionEnd;
  if (circuits.length && !isText && !String(getSelection())) {
    event.preventDefault();
    event.clipboardData.setData('text/plain', table(circuits));
  }
});

document.addEventListener('paste', event => {
  const text = event.clipboardData?.getData('text/plain') ?? '';
  const field = event.target;
  if (!isCell(field) || !field.closest('#circuits') || !/[\t\n\r]/.test(text.trimEnd())) {
    return;
  }
  event.preventDefault();
  const at = columnOf(field) === 'pick' ? fieldIn(field.closest('tr.line'), 'title') : field;
  htmx.ajax('POST', form().getAttribute('action'), {
    source: form(),
    target: '#work',
    swap: 'moved',
    values: {do: 'paste', at: at.name, pasted: text},
  });
});

noteRevision();
