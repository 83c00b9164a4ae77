// Says in words within three seconds that the program does not answer, holds presses back meanwhile so that none is lost
// silently, and loads the page again when another start of the program answers: what was on it belonged to the last one.
const EVERY = 1000;
const PATIENCE = 1500;
// Which start of the program this tab has seen last: a page that finds another one was loaded because of a restart.
const STARTED = 'pw-started';

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

// Who was typing gets their place back: a field under something inert loses the focus, and what is typed on is lost.
let typedIn = null;

function hold(is) {
  const shell = frame();
  if (!shell || shell.inert === is) return;
  if (is) typedIn = document.activeElement;
  // Open dialogs lie beside the shell, and their buttons book just as well.
  for (const part of [shell, ...document.querySelectorAll('vaadin-dialog, vaadin-dialog-overlay, vaadin-confirm-dialog')]) {
    part.inert = is;
  }
  if (!is) {
    if (typedIn?.isConnected && (document.activeElement ?? document.body) === document.body) typedIn.focus();
    typedIn = null;
  }
}

function away(is, surely) {
  const shell = frame();
  if (!shell) return;
  banner(is ? shell.dataset.aliveAway : '', 'bad');
  // One late answer may be a busy moment: words then, but nobody is stopped in the middle of a word.
  hold(is && surely);
}

async function look() {
  if (document.visibilityState !== 'visible' || !frame()) return;
  try {
    const answer = await fetch(new URL('healthz', document.baseURI), {cache: 'no-store', signal: AbortSignal.timeout(PATIENCE)});
    const now = answer.headers.get('X-Started');
    if (!answer.ok) throw new Error('not yet');
    if (started && now && now !== started) {
      location.reload();
      return;
    }
    if (missed > 0) away(false, true);
    missed = 0;
    if (now) {
      const before = sessionStorage.getItem(STARTED);
      sessionStorage.setItem(STARTED, now);
      if (!started && before && before !== now) sayRestarted();
      started = now;
    }
  } catch (wrong) {
    missed++;
    // Refused or 'not yet' is sure at once; a timeout only when it comes twice.
    away(true, wrong?.name !== 'TimeoutError' || missed > 1);
  }
}

function sayRestarted() {
  banner(frame().dataset.aliveRestarted, 'warn');
  setTimeout(() => banner(''), 20000);
}

async function run() {
  await look();
  setTimeout(run, EVERY);
}
run();
