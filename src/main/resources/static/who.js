// The name of the person at this browser is kept as soon as its field is left.

const form = document.querySelector('form.your-name');

form?.addEventListener('change', async event => {
  event.stopPropagation();
  const answer = await fetch(form.action, {
    method: 'POST', body: new URLSearchParams(new FormData(form)), redirect: 'manual',
  }).catch(() => ({type: 'error'}));
  form.classList.toggle('unkept', answer.type !== 'opaqueredirect');
});
