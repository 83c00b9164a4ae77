// Shows how long a clock at the bench has been running. The clock itself runs in the database; this only counts on from
// the server's time, so that a device whose own clock is wrong shows the same.
const offsets = new WeakMap();
function show() {
  for (const element of document.querySelectorAll('[data-bench-since]')) {
    if (!offsets.has(element)) offsets.set(element, Number(element.dataset.benchNow) - Date.now());
    const seconds = Math.max(0, Math.floor((Date.now() + offsets.get(element) - Number(element.dataset.benchSince)) / 1000));
    const parts = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60].map(n => String(n).padStart(2, '0'));
    element.textContent = parts.join(':');
  }
}
setInterval(show, 1000);
