// What a field says, and what is kept of it: its state in the newest answer of the service.

export const form = () => document.getElementById('job');

/** A text of the page's language; the server wrote it into the tray. */
export const say = (name, ...values) => values.reduce(
    (text, value, i) => text.replace(`{${i}}`, value), document.getElementById('tray').dataset[name]);

/** One or several. */
export const sayMany = (name, many) => say(`${name}${many === 1 ? 'One' : 'Other'}`, many);

export const textOf = field => field.type === 'checkbox' ? String(field.checked) : field.value;

export function keptOf(field) {
  if (field.dataset.kept !== undefined) {
    return field.dataset.kept;
  }
  if (field.nodeName === 'SELECT') {
    const option = [...field.options].find(({defaultSelected}) => defaultSelected);
    return (option ?? field.options[0])?.value ?? '';
  }
  return field.type === 'checkbox' ? String(field.defaultChecked) : field.defaultValue;
}

export function setKept(field, text) {
  delete field.dataset.kept;
  if (field.nodeName === 'SELECT') {
    const shown = field.value;
    for (const option of field.options) {
      option.defaultSelected = option.value === text;
    }
    field.value = shown;
  } else if (field.type === 'checkbox') {
    field.defaultChecked = text === 'true';
  } else if (field.type !== 'hidden') {
    field.defaultValue = text;
  }
}

/** Only these, and those of which the page says so, can say something else than what is kept. */
const touched = new Set();

for (const event of ['input', 'change']) {
  document.addEventListener(event, ({target}) => touched.add(target), true);
}

export function setText(field, text) {
  touched.add(field);
  if (field.type === 'checkbox') {
    field.checked = text === 'true';
  } else {
    field.value = text;
  }
}

/** "9,5" says the same as 9.5. */
const plain = (field, text) => field.inputMode === 'decimal' ? text.trim().replace(',', '.') : text.trim();

export const saysSame = (field, one, other) => plain(field, one) === plain(field, other);

export const isChanged = field => !saysSame(field, textOf(field), keptOf(field));

const isOfJob = field => field.isConnected && field.form === form() && field.name?.startsWith('/')
    && !(field.type === 'hidden' && !field.classList.contains('kept'));

/** The fields of the job that say something else than what is kept. */
export function changedFields() {
  form()?.querySelectorAll('[data-kept]').forEach(field => touched.add(field));
  for (const field of touched) {
    if (!isOfJob(field) || !isChanged(field)) {
      touched.delete(field);
    }
  }
  return [...touched];
}
