/* The outline over a photo: corners follow the finger, a painted stroke becomes a bad area. Places are told in the photo's pixels. */
window.pwSheetsPhoto = {
  listen(box, painting) {
    box.pwPainting = painting;
    if (box.pwListens) return;
    box.pwListens = true;
    let corner = null;
    let stroke = null;
    let line = null;
    const place = (event) => {
      const svg = box.querySelector('svg');
      const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
      return [at.x, at.y];
    };
    box.addEventListener('pointerdown', (event) => {
      if (box.pwPainting) {
        stroke = [place(event)];
        line = document.createElementNS('http://www.w3.org/2000/svg', 'polyline');
        line.setAttribute('class', 'sheets-photo-bad');
        box.querySelector('svg').append(line);
      } else if (event.target.dataset && event.target.dataset.i !== undefined) {
        corner = event.target;
      } else {
        return;
      }
      event.preventDefault();
      box.setPointerCapture(event.pointerId);
    });
    box.addEventListener('pointermove', (event) => {
      if (corner) {
        const [u, v] = place(event);
        corner.setAttribute('cx', u);
        corner.setAttribute('cy', v);
      } else if (stroke) {
        stroke.push(place(event));
        line.setAttribute('points', stroke.map((p) => p.join(',')).join(' '));
      }
    });
    const end = (event) => {
      if (corner) {
        const [u, v] = place(event);
        box.dispatchEvent(new CustomEvent('pw-corner', { detail: { i: Number(corner.dataset.i), u, v } }));
      } else if (stroke) {
        const every = Math.max(1, Math.ceil(stroke.length / 200));
        const points = stroke.filter((p, i) => i % every === 0).map((p) => p.map((x) => x.toFixed(1)).join(' ')).join(' ');
        box.dispatchEvent(new CustomEvent('pw-painted', { detail: { points } }));
      }
      corner = null;
      stroke = null;
    };
    box.addEventListener('pointerup', end);
    box.addEventListener('pointercancel', end);
  },
};
