// Shows how long a cut has been running; the time itself is kept by the program.
window.cuttingClock = (element) => {
  const since = Number(element.dataset.since);
  const tick = () => {
    if (!element.isConnected) {
      clearInterval(timer);
      return;
    }
    const seconds = Math.max(0, Math.floor((Date.now() - since) / 1000));
    const two = (n) => String(n).padStart(2, '0');
    element.textContent = `${Math.floor(seconds / 3600)}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
  };
  const timer = setInterval(tick, 1000);
  tick();
};
