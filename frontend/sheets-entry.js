/* Entering boards with one hand: the enter key goes from length to length, and only in the last takes the board in. */
window.pwSheetsEntry = {
  chain(row) {
    if (row.pwChain) return;
    row.pwChain = true;
    const inputs = () => [...row.querySelectorAll('input')];
    const hint = () => inputs().forEach((input, i, all) =>
      input.setAttribute('enterkeyhint', i < all.length - 1 ? 'next' : 'done'));
    setTimeout(hint, 100);
    row.addEventListener('keydown', (event) => {
      const all = inputs();
      const here = all.indexOf(event.target);
      if (event.key !== 'Enter' || here < 0) return;
      const next = all.find((input, i) => i > here && !input.value.trim());
      if (next) {
        event.preventDefault();
        event.stopPropagation();
        next.focus();
      }
    });
  },
  first(row) {
    const input = row.querySelector('input');
    if (input) {
      input.focus();
      input.select();
    }
  },
};
