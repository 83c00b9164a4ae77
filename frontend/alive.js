// Says in words within three seconds that the program does not answer, holds presses back meanwhile so that none is lost
// silently, and loads the page again when another start of the program answers: what was on it belonged to the last one.
const EVERY = 1000;
const PATIENCE = 1500;
const RESTARTED = 'pw-restarted';

const frame = () => document.querySelector('[data-alive-away]');
let started = null;
let missed = 0;

function banner(text, kind) {
  let box = document.getElementById('pw-alive');
  if (!text) {
    box?.remove();
    return;
  }
  if (!box) {
    box = document.createElement('div');
    box.id = 'pw-alive';
    box.setAttribute('role', 'alert');
    document.body.append(box);
  }
  box.dataset.kind = kind;
  if (box.textContent !== text) box.textContent = text;
}

function away(is) {
  const shell = frame();
  if (!shell) return;
  shell.inert = is;
  banner(is ? shell.dataset.aliveAway : '', 'bad');
}

async function look() {
  if (document.visibilityState !== 'visible' || !frame()) return;
  try {
    const answer = await fetch(new URL('healthz', document.baseURI), {cache: 'no-store', signal: AbortSignal.timeout(PATIENCE)});
    const now = answer.headers.get('X-Started');
    if (!answer.ok) throw new Error('not yet');
    if (started && now && now !== started) {
      sessionStorage.setItem(RESTARTED, '1');
      location.reload();
      return;
    }
    started = now ?? started;
    if (missed > 0) away(false);
    missed = 0;
  } catch {
    missed++;
    away(true);
  }
}

function sayRestarted() {
  const shell = frame();
  if (shell && sessionStorage.getItem(RESTARTED)) {
    sessionStorage.removeItem(RESTARTED);
    banner(shell.dataset.aliveRestarted, 'warn');
    setTimeout(() => banner(''), 20000);
  }
}

async function run() {
  await look();
  if (missed === 0) sayRestarted();
  setTimeout(run, EVERY);
}
run();
