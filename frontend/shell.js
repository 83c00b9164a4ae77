// The frame's own habits: a page opens at its top, a page gone back to where it was left; the way past the rooms; the name
// of a new page is said aloud; the focus does not fall off a page that shows itself again.
(() => {
  const left = new Map();
  const bare = (path) => path.replace(/^\//, '');
  let here = bare(location.pathname);
  const scroller = () => document.querySelector('vaadin-app-layout.shell')?.shadowRoot?.querySelector('[part="content"]');
  const said = () => {
    let box = document.getElementById('pw-said');
    if (!box) {
      box = document.createElement('div');
      box.id = 'pw-said';
      box.className = 'pw-hidden';
      box.setAttribute('role', 'status');
      document.body.append(box);
    }
    return box;
  };

  // What scrolls is inside the layout, so a page's place is noted here and not by the browser: before it is left, because
  // a shorter page that takes its place scrolls too.
  const leave = () => {
    const part = scroller();
    if (part) left.set(here, part.scrollTop);
  };
  document.addEventListener('click', leave, true);
  // Only the browser knows for certain that somebody went back; the server hears of it as of any other way to a page.
  let wentBack = false;
  window.addEventListener('popstate', (event) => {
    leave();
    wentBack = event.isTrusted;
  }, true);

  function arrived(path, back, first) {
    const part = scroller();
    const returned = back || wentBack;
    wentBack = false;
    here = bare(path);
    if (!part) return;
    const target = location.hash.length > 1 && document.getElementById(decodeURIComponent(location.hash.slice(1)));
    if (target) target.scrollIntoView();
    else if (!returned) part.scrollTop = 0;
    else {
      // What the page shows may come a moment later.
      const to = left.get(here) || 0;
      const again = (tries) => {
        part.scrollTop = to;
        if (part.scrollTop < to && tries > 0) setTimeout(() => again(tries - 1), 50);
      };
      again(10);
    }
    if (!first) setTimeout(() => { said().textContent = document.title; }, 150);
  }

  document.addEventListener('click', (event) => {
    if (!event.target.closest?.('.shell-past')) return;
    event.preventDefault();
    event.stopPropagation();
    const main = document.getElementById('main');
    main?.focus();
    const part = scroller();
    if (part) part.scrollTop = 0;
  }, true);

  // A page that shows itself again has new elements: the focus stays where it was, on the one that means the same.
  const means = (element) => {
    const host = element.closest('vaadin-button, vaadin-tab, vaadin-checkbox, vaadin-select, vaadin-combo-box, vaadin-text-field, a, button, summary')
      || element;
    return [host.tagName, host.id, host.getAttribute('aria-label') || host.label || host.textContent.trim().replace(/\s+/g, ' ').slice(0, 60)].join('|');
  };
  let last = null;
  let meant = '';
  let byKey = false;
  let waiting = 0;
  document.addEventListener('keydown', () => { byKey = true; }, true);
  document.addEventListener('pointerdown', () => { byKey = false; }, true);
  document.addEventListener('focusin', (event) => {
    if (event.target.closest?.('#main') && event.target.id !== 'main') {
      last = event.target;
      meant = means(last);
    }
  });
  const lost = () => {
    waiting = 0;
    const at = document.activeElement;
    if (!last || last.isConnected || at && at !== document.body || document.querySelector('[opened][modal], vaadin-dialog[opened], vaadin-confirm-dialog[opened]')) return;
    const main = document.getElementById('main');
    const typed = /INPUT|TEXTAREA/.test(last.tagName);
    if (!main || typed && !byKey) return;
    const same = [...main.querySelectorAll(last.tagName)].find((one) => means(one) === meant && one.checkVisibility?.() !== false);
    last = null;
    (same || main).focus({preventScroll: true});
  };
  new MutationObserver(() => { if (last && !last.isConnected && !waiting) waiting = setTimeout(lost, 80); })
    .observe(document.documentElement, {childList: true, subtree: true});

  // One key from everywhere, but not where somebody types.
  document.addEventListener('keydown', (event) => {
    const typing = event.target.closest?.('input, textarea, select, [contenteditable]');
    const asked = event.key === '/' && !typing || event.key.toLowerCase() === 'k' && (event.ctrlKey || event.metaKey);
    const button = document.getElementById('find');
    if (!asked || event.altKey || !button || document.querySelector('vaadin-dialog[opened], vaadin-confirm-dialog[opened]')) return;
    event.preventDefault();
    button.click();
  });

  window.pwShell = {arrived};

  // A long list holds only the rows that are seen. Before it is printed it says how many others are left out.
  window.addEventListener('beforeprint', () => {
    for (const list of document.querySelectorAll('[data-on-paper]')) {
      const box = list.getBoundingClientRect();
      const all = list.items?.length ?? 0;
      const seen = [...list.children].filter((row) => {
        const at = row.getBoundingClientRect();
        return row.checkVisibility() && at.height && at.top >= box.top - 1 && at.bottom <= box.bottom + 1;
      }).length;
      let note = list.nextElementSibling;
      if (!note?.classList.contains('pw-paper-note')) {
        note = document.createElement('p');
        note.className = 'pw-paper-note';
        list.after(note);
      }
      note.textContent = seen < all ? list.dataset.onPaper.replace('#', seen).replace('@', all) : '';
    }
  });
})();
