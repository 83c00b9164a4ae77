/* Drags the blank over its sheet: moves the drawing at once, tells the server where it is, which judges and answers. */
window.pwSheets = {
  drag(box) {
    if (box.pwDrag) return;
    box.pwDrag = true;
    let start = null;
    let told = 0;
    const millimetres = (event) => {
      const svg = box.querySelector('svg');
      const view = svg.viewBox.baseVal;
      const perPixel = view.width / svg.getBoundingClientRect().width;
      // its middle stays over the drawing, so that it can always be caught again
      const within = (by, middle, low, length) => Math.min(low + length - middle, Math.max(low - middle, by));
      return {
        x: within((event.clientX - start.x) * perPixel, start.middleX, view.x, view.width),
        y: within((event.clientY - start.y) * perPixel, start.middleY, view.y, view.height),
      };
    };
    const tell = (name, moved) => box.dispatchEvent(new CustomEvent(name, { detail: moved }));
    box.addEventListener('pointerdown', (event) => {
      if (!event.target.closest('.sheets-held')) return;
      const shape = box.querySelector('.sheets-held').getBBox();
      start = { x: event.clientX, y: event.clientY,
        middleX: shape.x + shape.width / 2, middleY: shape.y + shape.height / 2 };
      box.setPointerCapture(event.pointerId);
      event.preventDefault();
    });
    // a drawing's touch-action is not heard everywhere: without this the page scrolls and takes the finger away
    box.addEventListener('touchstart', (event) => {
      if (event.target.closest('.sheets-held')) event.preventDefault();
    }, { passive: false });
    box.addEventListener('pointermove', (event) => {
      if (!start) return;
      const moved = millimetres(event);
      box.querySelector('.sheets-held').setAttribute('transform', `translate(${moved.x} ${moved.y})`);
      if (Date.now() - told > 120) {
        told = Date.now();
        tell('blank-over', moved);
      }
    });
    const end = (event) => {
      if (!start) return;
      const moved = millimetres(event);
      start = null;
      tell('blank-dropped', moved);
    };
    box.addEventListener('pointerup', end);
    box.addEventListener('pointercancel', end);
    box.addEventListener('keydown', (event) => {
      const step = event.shiftKey ? 10 : 1;
      const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
      if (way) {
        event.preventDefault();
        tell('blank-dropped', { x: way[0] * step, y: way[1] * step, exact: true });
      }
    });
  },
};
