// A figure opens to its formula: the link's own page, fetched into a slip beside the figure.

const panel = document.getElementById('why');
const told = panel.querySelector('.told');
const GAP = 6;
let asked = null;

function place(link) {
  const {left, top, bottom} = link.getBoundingClientRect();
  const {offsetWidth: width, offsetHeight: height} = panel;
  const below = bottom + GAP + height <= innerHeight || top - GAP - height < 0;
  const y = below ? Math.min(bottom + GAP, Math.max(0, innerHeight - height)) : top - GAP - height;
  panel.style.left = `${Math.max(0, Math.min(left, innerWidth - width))}px`;
  panel.style.top = `${Math.max(0, y)}px`;
}

async function ask(link) {
  asked = link;
  const answer = await fetch(link.href, {headers: {'HX-Request': 'true'}});
  if (!answer.ok) {
    location.assign(link.href);
    return;
  }
  const html = await answer.text();
  if (asked !== link) {
    return;
  }
  told.innerHTML = html;
  panel.showPopover({source: link});
  panel.scrollTop = 0;
  place(link);
  panel.focus({preventScroll: true});
}

document.addEventListener('click', event => {
  const link = event.target.closest?.('a.opens');
  if (link && event.button === 0 && !event.ctrlKey && !event.metaKey && !event.shiftKey && !event.altKey) {
    event.preventDefault();
    ask(link).catch(() => location.assign(link.href));
  }
});

panel.addEventListener('toggle', ({newState}) => {
  if (newState === 'closed') {
    const link = asked;
    asked = null;
    if (link?.isConnected && (document.activeElement === document.body || panel.contains(document.activeElement))) {
      link.focus({preventScroll: true});
    }
  }
});
