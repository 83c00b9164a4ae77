// Lets prints be chosen and drawn to another place on the sheets of a run. Everything is checked again on the server.
(() => {
  const CHOOSE_WITHIN = 3;

  function toMm(svg, event) {
    const point = new DOMPoint(event.clientX, event.clientY);
    return point.matrixTransform(svg.getScreenCTM().inverse());
  }

  function board(host) {
    if (host.printingReady) return;
    host.printingReady = true;
    let drag = null;

    host.addEventListener('pointerdown', (event) => {
      const item = event.target.closest('[data-movable]');
      host.printingFocus = null;
      if (!item || event.button !== 0) return;
      const svg = item.ownerSVGElement;
      const from = toMm(svg, event);
      drag = { item, svg, from, startX: event.clientX, startY: event.clientY, moved: false, pointer: event.pointerId };
      item.setPointerCapture(event.pointerId);
    });

    // touch-action on parts of a drawing does not keep phones from scrolling the page and taking the finger away.
    host.addEventListener('touchstart', (event) => {
      if (event.target.closest('[data-movable]') && event.cancelable) event.preventDefault();
    }, { passive: false });

    host.addEventListener('pointermove', (event) => {
      if (!drag || event.pointerId !== drag.pointer) return;
      if (!drag.moved && Math.hypot(event.clientX - drag.startX, event.clientY - drag.startY) < CHOOSE_WITHIN) return;
      if (!drag.moved) {
        drag.moved = true;
        drag.item.classList.add('is-moving');
        drag.svg.classList.add('is-lifted');
      }
      const at = toMm(drag.svg, event);
      drag.item.setAttribute('transform', `translate(${at.x - drag.from.x} ${at.y - drag.from.y})`);
      event.preventDefault();
    });

    const put = (event) => {
      if (!drag || event.pointerId !== drag.pointer) return;
      const { item, svg, from, moved } = drag;
      drag = null;
      item.classList.remove('is-moving');
      svg.classList.remove('is-lifted');
      if (event.type === 'pointercancel') {
        item.removeAttribute('transform');
        return;
      }
      const id = Number(item.dataset.item);
      if (!moved) {
        host.$server.chosen(id);
        return;
      }
      const under = document.elementsFromPoint(event.clientX, event.clientY)
        .map((element) => element.closest && element.closest('svg[data-sheet]'))
        .find((found) => found && host.contains(found)) || svg;
      const grabX = from.x - Number(item.dataset.x);
      const grabY = from.y - Number(item.dataset.y);
      const at = toMm(under, event);
      host.$server.moved(id, Number(under.dataset.sheet), at.x - grabX, at.y - grabY);
    };
    host.addEventListener('pointerup', put);
    host.addEventListener('pointercancel', put);

    host.addEventListener('keydown', (event) => {
      const item = event.target.closest('[data-movable]');
      if (!item) return;
      const id = Number(item.dataset.item);
      host.printingFocus = id;
      const step = event.shiftKey ? 1 : 5;
      const by = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, -step], ArrowDown: [0, step] }[event.key];
      if (by) {
        const sheet = Number(item.ownerSVGElement.dataset.sheet);
        host.$server.moved(id, sheet, Number(item.dataset.x) + by[0], Number(item.dataset.y) + by[1]);
      } else if (event.key === 'Enter' || event.key === ' ') {
        host.$server.chosen(id);
      } else {
        return;
      }
      event.preventDefault();
    });
  }

  // A redrawn sheet has new elements: who moves prints by key stays on the print.
  function redrawn(host) {
    const item = host.printingFocus && host.querySelector(`[data-item="${host.printingFocus}"]`);
    if (item) item.focus({ preventScroll: true });
  }

  window.puzzleWorkshopPrinting = { board, redrawn };
})();
