/* The outline over a photo: corners follow the finger, a painted stroke becomes a bad area. Places are told in the photo's pixels. */
window.pwSheetsPhoto = {
  /* Sizes for fingers, in the screen's pixels. */
  CORNER: 6,
  MANY: 30,
  REACH: 24,
  LOUPE: 112,
  LARGER: 3,

  over(box, drawn, painting) {
    box.querySelector('.sheets-photo-over').innerHTML = drawn;
    this.listen(box, painting);
  },

  /* A photo is shown smaller than it is; corners are not. */
  size(box) {
    const svg = box.querySelector('svg');
    const seen = svg && svg.getScreenCTM();
    if (!seen || !seen.a) return;
    const corners = svg.querySelectorAll('.sheets-photo-corner');
    const shown = corners.length > this.MANY ? this.CORNER * 0.6 : this.CORNER;
    corners.forEach((circle) => circle.setAttribute('r', shown / seen.a));
    svg.querySelectorAll('.sheets-photo-touch').forEach((circle) => circle.setAttribute('r', this.REACH / seen.a));
  },

  edge(svg) {
    const places = [...svg.querySelectorAll('.sheets-photo-touch')].map(
      (circle) => `${circle.getAttribute('cx')} ${circle.getAttribute('cy')}`
    );
    svg.querySelectorAll('.sheets-photo-edge').forEach((path) => path.setAttribute('d', `M${places.join('L')}Z`));
  },

  /* What lies under the finger, larger, in the corner of the photo that is farthest from it. */
  loupe(box, at, event) {
    let loupe = box.querySelector('.sheets-photo-loupe');
    const svg = box.querySelector('svg');
    if (!at) {
      if (loupe) loupe.remove();
      return;
    }
    if (!loupe) {
      loupe = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
      loupe.setAttribute('class', 'sheets-photo-loupe');
      loupe.setAttribute('aria-hidden', 'true');
      loupe.innerHTML = `<use href="#${svg.querySelector('image').id}"/><path class="sheets-photo-edge"/>`;
      box.append(loupe);
    }
    const frame = box.getBoundingClientRect();
    loupe.classList.toggle('sheets-photo-right', event.clientX < frame.left + frame.width / 2);
    const side = this.LOUPE / this.LARGER / svg.getScreenCTM().a;
    loupe.setAttribute('viewBox', `${at[0] - side / 2} ${at[1] - side / 2} ${side} ${side}`);
    loupe.querySelector('path').setAttribute('d', svg.querySelector('.sheets-photo-edge').getAttribute('d'));
  },

  listen(box, painting) {
    box.pwPainting = painting;
    box.classList.toggle('sheets-photo-painting', painting);
    this.size(box);
    if (box.pwListens) return;
    box.pwListens = true;
    new ResizeObserver(() => this.size(box)).observe(box);
    let corner = null;
    let stroke = null;
    let line = null;
    const svg = () => box.querySelector('svg:not(.sheets-photo-loupe)');
    const place = (event) => {
      const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg().getScreenCTM().inverse());
      return [at.x, at.y];
    };
    /* Where corners lie close together a finger touches several: the nearest is meant. */
    const nearest = (at) => {
      let best = null;
      let least = Infinity;
      svg()
        .querySelectorAll('.sheets-photo-touch')
        .forEach((circle) => {
          const far = Math.hypot(circle.getAttribute('cx') - at[0], circle.getAttribute('cy') - at[1]);
          if (far < least) {
            least = far;
            best = circle;
          }
        });
      return best;
    };
    let grip = [0, 0];
    box.addEventListener('pointerdown', (event) => {
      if (!event.isPrimary) return;
      if (box.pwPainting) {
        stroke = [place(event)];
        line = document.createElementNS('http://www.w3.org/2000/svg', 'polyline');
        line.setAttribute('class', 'sheets-photo-bad');
        svg().append(line);
      } else if (event.target.classList.contains('sheets-photo-touch')) {
        const at = place(event);
        corner = nearest(at);
        /* the corner keeps its distance from the finger, so that touching alone moves nothing */
        grip = [corner.getAttribute('cx') - at[0], corner.getAttribute('cy') - at[1]];
      } else {
        return;
      }
      event.preventDefault();
      box.setPointerCapture(event.pointerId);
    });
    box.addEventListener('pointermove', (event) => {
      if (corner) {
        const at = place(event);
        const to = [at[0] + grip[0], at[1] + grip[1]];
        svg()
          .querySelectorAll(`circle[data-i="${corner.dataset.i}"]`)
          .forEach((circle) => {
            circle.setAttribute('cx', to[0]);
            circle.setAttribute('cy', to[1]);
          });
        this.edge(svg());
        this.loupe(box, to, event);
      } else if (stroke) {
        stroke.push(place(event));
        line.setAttribute('points', stroke.map((p) => p.join(',')).join(' '));
      }
    });
    const end = (event) => {
      if (corner) {
        const u = Number(corner.getAttribute('cx'));
        const v = Number(corner.getAttribute('cy'));
        box.dispatchEvent(new CustomEvent('pw-corner', { detail: { i: Number(corner.dataset.i), u, v } }));
      } else if (stroke) {
        const every = Math.max(1, Math.ceil(stroke.length / 200));
        const points = stroke.filter((p, i) => i % every === 0).map((p) => p.map((x) => x.toFixed(1)).join(' ')).join(' ');
        box.dispatchEvent(new CustomEvent('pw-painted', { detail: { points } }));
        line.remove();
      }
      this.loupe(box, null, event);
      corner = null;
      stroke = null;
    };
    box.addEventListener('pointerup', end);
    box.addEventListener('pointercancel', end);
  },
};
