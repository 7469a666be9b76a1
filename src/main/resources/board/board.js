// Keeps an open page right: new orders come in by themselves, words that could not be sent wait.
(() => {
  'use strict';
  const line = document.getElementById('line');
  const KEPT = 'rainward.kept';
  const DRAFT = 'rainward.draft ';
  let shownAt = Date.now();
  let offlineSince = 0;
  let stale = false;
  let refused = '';

  const main = () => document.getElementById('main');
  const kept = () => JSON.parse(localStorage.getItem(KEPT) || '[]');
  const keep = (all) => localStorage.setItem(KEPT, JSON.stringify(all));
  const clock = (ms) => new Date(ms).toLocaleTimeString([], {hour: 'numeric', minute: '2-digit'});

  function tell(words, button, act) {
    line.replaceChildren();
    if (!words) return;
    line.append(words);
    if (button) {
      const b = document.createElement('button');
      b.type = 'button';
      b.className = 'quiet';
      b.textContent = button;
      b.addEventListener('click', act);
      line.append(b);
    }
  }

  function status() {
    const waiting = kept().length;
    const words = waiting ? waiting + (waiting === 1 ? ' word waits' : ' words wait')
        + ' to be sent; nothing typed is lost. ' : '';
    if (offlineSince) {
      tell('No connection since ' + clock(offlineSince) + ': this page is as it was then. ' + words);
    } else if (waiting) {
      tell(words, 'Send now', flush);
    } else if (refused) {
      tell(refused);
    } else if (stale) {
      tell('The order has changed.', 'Show it', () => load(location.href, true));
    } else {
      tell('');
    }
  }

  const ticks = (box) => box.type === 'checkbox';
  const filled = (box) => ticks(box) ? (box.checked ? 'on' : '') : box.value;
  const fill = (box, text) => { if (ticks(box)) box.checked = text === 'on'; else box.value = text; };

  // Somebody who is typing is not interrupted.
  function typing() {
    return [...document.querySelectorAll('form[data-say]')].some((form) =>
      [...form.elements].some((e) => e.matches('input:not([type=hidden],[type=file]),textarea,select')
        && (e === document.activeElement || filled(e) !== (e.dataset.was ?? filled(e)))));
  }

  async function load(address, force) {
    if (!force && typing()) {
      stale = true;
      status();
      return;
    }
    try {
      const answer = await fetch(address, {headers: {Accept: 'text/html'}});
      if (answer.redirected && new URL(answer.url).pathname === '/door') {
        location.href = answer.url;
        return;
      }
      if (!answer.ok) return;
      const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
      const focus = document.activeElement && document.activeElement.getAttribute('aria-label');
      const open = [...document.querySelectorAll('details[open] > summary')].map((s) => s.textContent);
      const y = scrollY;
      main().replaceWith(page.getElementById('main'));
      document.querySelector('.top').replaceWith(page.querySelector('.top'));
      document.body.dataset.turn = page.body.dataset.turn;
      document.body.dataset.token = page.body.dataset.token;
      document.body.dataset.now = page.body.dataset.now;
      document.querySelectorAll('details > summary').forEach((s) => {
        if (open.includes(s.textContent)) s.parentElement.open = true;
      });
      shownAt = Date.now();
      stale = false;
      refused = '';
      ready();
      scrollTo(0, y);
      if (focus) {
        const again = document.querySelector('[aria-label="' + CSS.escape(focus) + '"]');
        if (again) again.focus({preventScroll: true});
      }
      status();
    } catch {
      lost();
    }
  }

  function lost() {
    offlineSince ||= Date.now();
    status();
  }

  function found() {
    if (!offlineSince) return;
    offlineSince = 0;
    status();
    flush().then(() => load(location.href));
  }

  async function send(body) {
    const data = new URLSearchParams(body);
    data.set('token', document.body.dataset.token);
    return fetch('/say', {method: 'POST', body: data, headers: {Accept: 'application/json'}});
  }

  async function flush() {
    for (const word of kept()) {
      try {
        const answer = await send(word);
        if (answer.status === 401 || answer.status === 403) {
          await load(location.href, true);
          return;
        }
        const said = await answer.json();
        keep(kept().filter((w) => w.key !== word.key));
        if (!answer.ok) tell('Not written: ' + said.words);
      } catch {
        lost();
        return;
      }
    }
    status();
  }

  // Words are sent without leaving the page; where that fails they are kept and sent later.
  async function submit(event) {
    const form = event.target;
    if (!form.matches('form[data-say]')) return;
    event.preventDefault();
    const button = event.submitter;
    const data = new FormData(form, button);
    const word = Object.fromEntries(data);
    word.key = word.key + ' ' + word.act;
    if (button) button.setAttribute('aria-busy', 'true');
    try {
      const answer = await send(word);
      const said = await answer.json();
      if (answer.status === 401) {
        location.href = '/door?back=' + encodeURIComponent(location.pathname);
        return;
      }
      // It stays until the form is sent again: news of the order must not cover it.
      refused = answer.ok ? '' : 'Not written: ' + said.words;
      if (refused) {
        status();
        return;
      }
      form.querySelectorAll('[data-was]').forEach((e) => fill(e, e.dataset.was));
      localStorage.removeItem(DRAFT + place(form));
      const address = new URL(word.back || location.href, location.href);
      address.searchParams.set('said', word.key);
      history.replaceState(null, '', address);
      await load(address, true);
      main().focus({preventScroll: true});
      scrollTo(0, 0);
    } catch {
      if (!word.at && ['START', 'DONE', 'LOOK', 'SOIL', 'RAIN'].includes(word.act)) {
        const now = new Date();
        word.at = new Date(now - now.getTimezoneOffset() * 60000).toISOString().slice(0, 16);
      }
      keep([...kept(), word]);
      lost();
    } finally {
      if (button) button.removeAttribute('aria-busy');
    }
  }

  const place = (form) => location.pathname + ' '
      + [...form.querySelectorAll('button')].map((b) => b.value).join(' ');

  function drafts(form) {
    const boxes = [...form.querySelectorAll('input:not([type=hidden],[type=file]),textarea,select')];
    const before = JSON.parse(localStorage.getItem(DRAFT + place(form)) || '{}');
    boxes.forEach((box) => {
      box.dataset.was = filled(box);
      if (box.name in before && before[box.name] !== filled(box)) {
        fill(box, before[box.name]);
        const inside = box.closest('details');
        if (inside) inside.open = true;
      }
    });
    form.addEventListener('input', () => {
      const typed = Object.fromEntries(boxes.filter((b) => filled(b) !== b.dataset.was).map((b) => [b.name, filled(b)]));
      localStorage.setItem(DRAFT + place(form), JSON.stringify(typed));
    });
  }

  function count() {
    document.querySelectorAll('[data-until]').forEach((e) => {
      const serverNow = Number(document.body.dataset.now) + Date.now() - shownAt;
      const minutes = Math.floor((Number(e.dataset.until) - serverNow) / 60000);
      e.textContent = minutes <= 0 ? 'it may begin any time'
        : minutes >= 2880 ? Math.floor(minutes / 1440) + ' d ' + Math.floor(minutes / 60) % 24 + ' h'
        : Math.floor(minutes / 60) + ' h ' + minutes % 60 + ' min';
    });
  }

  // A file is read here and its text put into the box beside it, so that it can be looked at.
  function files(form) {
    form.querySelectorAll('[data-into]').forEach((file) => {
      file.closest('label').hidden = false;
      file.addEventListener('change', async () => {
        if (!file.files.length) return;
        const box = form.elements[file.dataset.into];
        box.value = await file.files[0].text();
        box.dispatchEvent(new Event('input', {bubbles: true}));
      });
    });
  }

  function ready() {
    document.querySelectorAll('form[data-say]').forEach(drafts);
    document.querySelectorAll('form[data-say]').forEach(files);
    count();
  }

  function listen() {
    const events = new EventSource('/live');
    events.addEventListener('turn', (event) => {
      found();
      if (event.data !== document.body.dataset.turn) load(location.href);
    });
    events.onopen = found;
    events.onerror = () => {
      lost();
      if (events.readyState === EventSource.CLOSED) {
        fetch('/live-check').then((r) => {
          if (r.status === 401) location.href = '/door?back=' + encodeURIComponent(location.pathname);
          else setTimeout(listen, 5000);
        }).catch(() => setTimeout(listen, 5000));
      }
    };
  }

  document.addEventListener('submit', submit);
  addEventListener('online', found);
  addEventListener('offline', lost);
  document.addEventListener('visibilitychange', () => {
    if (!document.hidden && Date.now() - shownAt > 60000) load(location.href);
  });
  setInterval(count, 20000);
  setInterval(() => { if (!document.hidden && Date.now() - shownAt > 600000) load(location.href); }, 60000);
  ready();
  status();
  if (kept().length) flush();
  listen();
})();
