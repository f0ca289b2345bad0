// Paper has no fields: each prints as the text in it, which may take several lines.

function print() {
  for (const field of document.querySelectorAll('.rows td.cell :is(input, select)')) {
    const text = field.nodeName === 'SELECT' ? field.selectedOptions[0]?.text : field.value;
    field.parentElement.dataset.text = text || field.placeholder || '';
  }
}

window.addEventListener('beforeprint', print);
matchMedia('print').addEventListener('change', ({matches}) => matches && print());
