// The crop editor's stage: shows a picture, the frame that becomes the puzzle and the cut lines on it, and lets the frame
// be dragged, resized and pinched. It only ever reports a frame; the server checks it, keeps it and says what it means.
(() => {
  const SVG = 'http://www.w3.org/2000/svg';
  const SMALLEST = 0.04; // of the picture's shorter side
  const LARGEST_FIT = 4; // a fitted frame is at most so many pictures wide or high
  const REPORT_EVERY = 120; // milliseconds, while dragging
  const TAP = 5; // CSS pixels that a finger may move and still have tapped

  const make = (name, attributes, parent) => {
    const node = document.createElementNS(SVG, name);
    for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, value);
    if (parent) parent.append(node);
    return node;
  };

  class CropStage extends HTMLElement {
    #scene = null;
    #svg = null;
    #fingers = new Map();
    #grip = null;
    #tap = null; // where a finger went down that has not moved yet
    #reported = 0;
    #timer = 0;
    #nodes = {};
    #resize = new ResizeObserver(() => this.#draw());

    connectedCallback() {
      if (Object.hasOwn(this, 'scene')) { // set before this class was known
        const early = this.scene;
        delete this.scene;
        this.scene = early;
      }
      this.#resize.observe(this);
    }

    disconnectedCallback() { this.#resize.disconnect(); clearTimeout(this.#timer); }

    set scene(text) {
      this.#scene = text ? JSON.parse(text) : null;
      this.#fingers.clear();
      this.#grip = null;
      this.#tap = null;
      this.#build();
    }

    get scene() { return this.#scene ? JSON.stringify(this.#scene) : ''; }

    // The turned picture measures W × H; all lengths below are in these units.
    get #w() { return this.#scene.turns % 2 ? this.#scene.height : this.#scene.width; }
    get #h() { return this.#scene.turns % 2 ? this.#scene.width : this.#scene.height; }

    #build() {
      this.replaceChildren();
      this.#svg = null;
      if (!this.#scene) return;
      const scene = this.#scene;
      const svg = make('svg', {class: 'artwork-crop-drawing', role: 'application', tabindex: 0,
        'aria-label': scene.label, preserveAspectRatio: 'xMidYMid meet'}, this);
      this.#svg = svg;
      const n = this.#nodes = {};
      n.border = make('rect', {}, svg);
      const w = this.#w, h = this.#h;
      n.image = make('image', {href: scene.address, width: scene.width, height: scene.height, preserveAspectRatio: 'none',
        transform: `translate(${w / 2} ${h / 2}) rotate(${90 * scene.turns}) translate(${-scene.width / 2} ${-scene.height / 2})`}, svg);
      n.shade = make('path', {class: 'artwork-crop-shade', 'fill-rule': 'evenodd'}, svg);
      n.overhang = make('rect', {class: 'artwork-crop-overhang'}, svg);
      n.lines = make('g', {}, svg);
      if (scene.lines) {
        make('path', {d: scene.lines, class: 'artwork-crop-lines-halo'}, n.lines);
        make('path', {d: scene.lines, class: 'artwork-crop-lines'}, n.lines);
      }
      if (scene.marks) {
        make('path', {d: scene.marks, class: 'artwork-crop-marks-halo'}, n.lines);
        make('path', {d: scene.marks, class: 'artwork-crop-marks'}, n.lines);
      }
      n.frame = make('rect', {class: 'artwork-crop-frame'}, svg);
      n.corners = [[0, 0], [1, 0], [0, 1], [1, 1]].map(([cx, cy]) => {
        const g = make('g', {class: `artwork-crop-corner ${cx === cy ? 'down' : 'up'}`}, svg);
        make('circle', {class: 'reach', r: 22}, g);
        make('circle', {class: 'dot', r: 7}, g);
        g.addEventListener('pointerdown', e => this.#press(e, {cx, cy}));
        return {g, cx, cy};
      });
      n.frame.addEventListener('pointerdown', e => this.#press(e, null));
      // touch-action on parts of a drawing does not keep phones from scrolling the page and taking the finger away.
      const stay = e => { if (!this.#scene.still && e.cancelable) e.preventDefault(); };
      for (const part of [n.frame, ...n.corners.map(c => c.g)]) part.addEventListener('touchstart', stay, {passive: false});
      svg.addEventListener('pointermove', e => this.#move(e));
      for (const end of ['pointerup', 'pointercancel']) svg.addEventListener(end, e => this.#release(e));
      svg.addEventListener('wheel', e => {
        if (document.activeElement !== svg && !e.ctrlKey) return; // the page scrolls unless the stage was chosen
        e.preventDefault();
        this.#scale(Math.exp(Math.sign(e.deltaY) * 0.06));
        this.#report();
      }, {passive: false});
      svg.addEventListener('keydown', e => this.#key(e));
      this.#draw();
    }

    #draw() {
      if (!this.#svg) return;
      const {frame, border, fit, overhang, finishedWidth, finishedHeight} = this.#scene;
      const n = this.#nodes, w = this.#w, h = this.#h;
      const x = frame.left * w, y = frame.top * h, fw = frame.width * w, fh = frame.height * h;
      const beyond = overhang / finishedWidth * fw;
      // The view holds picture and frame with a little air; while a finger is down it stands still.
      if (!this.#grip && !this.#fingers.size) {
        const air = Math.max(w, h) * 0.03;
        const left = Math.min(0, x - beyond) - air, top = Math.min(0, y - beyond) - air;
        const right = Math.max(w, x + fw + beyond) + air, bottom = Math.max(h, y + fh + beyond) + air;
        this.#svg.setAttribute('viewBox', `${left} ${top} ${right - left} ${bottom - top}`);
        this.style.setProperty('--artwork-aspect', (right - left) / (bottom - top));
        this.view = {left, top, right, bottom};
      }
      const set = (node, values) => { for (const [k, v] of Object.entries(values)) node.setAttribute(k, v); };
      set(n.border, fit === 'FIT' ? {x, y, width: fw, height: fh, fill: border} : {width: 0, height: 0});
      const v = this.view;
      set(n.shade, {d: `M${v.left} ${v.top}H${v.right}V${v.bottom}H${v.left}ZM${x} ${y}h${fw}v${fh}h${-fw}Z`});
      set(n.overhang, {x: x - beyond, y: y - beyond, width: fw + 2 * beyond, height: fh + 2 * beyond});
      set(n.frame, {x, y, width: fw, height: fh});
      set(n.lines, {transform: `translate(${x} ${y}) scale(${fw / finishedWidth} ${fh / finishedHeight})`});
      const unit = this.#unit();
      for (const c of n.corners) set(c.g, {transform: `translate(${x + c.cx * fw} ${y + c.cy * fh}) scale(${unit})`});
    }

    /** Picture units of one CSS pixel. */
    #unit() {
      const m = this.#svg.getScreenCTM();
      return m && m.a ? 1 / m.a : 1;
    }

    #point(e) {
      const m = this.#svg.getScreenCTM().inverse();
      return {x: (e.clientX * m.a + m.e) / this.#w, y: (e.clientY * m.d + m.f) / this.#h};
    }

    #press(e, corner) {
      if (this.#scene.still || e.button > 0) return;
      e.preventDefault();
      e.stopPropagation();
      this.#svg.focus({preventScroll: true});
      try { this.#svg.setPointerCapture(e.pointerId); } catch { /* the finger has left already */ }
      this.#tap = corner || this.#fingers.size ? null : {x: e.clientX, y: e.clientY};
      this.#fingers.set(e.pointerId, this.#point(e));
      this.#hold(corner);
    }

    #hold(corner) {
      const points = [...this.#fingers.values()];
      const frame = {...this.#scene.frame};
      this.#grip = points.length >= 2
        ? {pinch: this.#distance(points), middle: this.#middle(points), frame}
        : {corner, from: points[0], frame};
    }

    #move(e) {
      if (!this.#fingers.has(e.pointerId) || !this.#grip) return;
      // a finger that only taps trembles a little
      if (this.#tap && Math.hypot(e.clientX - this.#tap.x, e.clientY - this.#tap.y) < TAP) return;
      this.#tap = null;
      this.#fingers.set(e.pointerId, this.#point(e));
      const points = [...this.#fingers.values()], g = this.#grip, f = g.frame;
      if (points.length >= 2 && g.pinch) {
        // Fingers apart means a closer look: the frame becomes smaller.
        const factor = g.pinch / Math.max(1e-6, this.#distance(points));
        const m = this.#middle(points);
        const size = this.#allowed(f.width * factor);
        this.#place(f.left + f.width / 2 - (m.x - g.middle.x), f.top + f.height / 2 - (m.y - g.middle.y), size);
      } else if (g.corner) {
        const {cx, cy} = g.corner;
        const ax = f.left + (1 - cx) * f.width, ay = f.top + (1 - cy) * f.height; // the corner that stays
        const byX = Math.abs(points[0].x - ax), byY = Math.abs(points[0].y - ay) * f.width / f.height;
        let width = this.#allowed(Math.max(byX, byY));
        if (this.#scene.fit === 'FILL') {
          const roomX = cx ? 1 - ax : ax, roomY = (cy ? 1 - ay : ay) * f.width / f.height;
          width = Math.min(width, roomX, roomY);
        }
        const height = width * f.height / f.width;
        this.#place(ax + (cx - 0.5) * width, ay + (cy - 0.5) * height, width);
      } else if (g.from) {
        this.#place(f.left + f.width / 2 + points[0].x - g.from.x, f.top + f.height / 2 + points[0].y - g.from.y, f.width);
      }
      this.#report();
    }

    #release(e) {
      if (!this.#fingers.delete(e.pointerId)) return;
      if (this.#fingers.size) { this.#hold(null); return; }
      this.#grip = null;
      this.#draw();
      if (this.#tap && e.type === 'pointerup') {
        this.#tap = null;
        const at = this.#point(e), f = this.#scene.frame;
        this.dispatchEvent(new CustomEvent('crop-tapped',
          {detail: {across: (at.x - f.left) / f.width, down: (at.y - f.top) / f.height}}));
        return;
      }
      this.#report(true);
    }

    #key(e) {
      if (this.#scene.still || e.ctrlKey || e.metaKey || e.altKey) return;
      const f = this.#scene.frame, step = e.shiftKey ? 0.05 : 0.01;
      const shift = {ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1]}[e.key];
      if (shift) {
        this.#place(f.left + f.width / 2 + shift[0] * step, f.top + f.height / 2 + shift[1] * step * this.#w / this.#h, f.width);
      } else if (e.key === '+' || e.key === '=') this.#scale(0.95);
      else if (e.key === '-' || e.key === '_') this.#scale(1 / 0.95);
      else return;
      e.preventDefault();
      this.#report();
    }

    #scale(factor) {
      if (this.#scene.still) return;
      const f = this.#scene.frame;
      this.#place(f.left + f.width / 2, f.top + f.height / 2, this.#allowed(f.width * factor));
    }

    /** A width between the smallest and the largest frame of this shape. */
    #allowed(width) {
      const f = this.#scene.frame, shape = f.height / f.width;
      const least = Math.max(SMALLEST * Math.min(this.#w, this.#h) / this.#w, SMALLEST * Math.min(this.#w, this.#h) / this.#h / shape);
      const most = this.#scene.fit === 'FILL' ? Math.min(1, 1 / shape) : Math.max(1, 1 / shape) * LARGEST_FIT;
      return Math.min(most, Math.max(Math.min(least, most), width));
    }

    #place(x, y, width) {
      const f = this.#scene.frame, height = width * f.height / f.width;
      let left = x - width / 2, top = y - height / 2;
      if (this.#scene.fit === 'FILL') {
        left = Math.min(1 - width, Math.max(0, left));
        top = Math.min(1 - height, Math.max(0, top));
      } else { // some of the picture stays in the frame
        left = Math.min(0.9, Math.max(0.1 - width, left));
        top = Math.min(0.9, Math.max(0.1 - height, top));
      }
      this.#scene.frame = {left, top, width, height};
      this.#draw();
    }

    #report(now = false) {
      clearTimeout(this.#timer);
      const wait = now ? 0 : Math.max(0, this.#reported + REPORT_EVERY - performance.now());
      if (wait > 0) { this.#timer = setTimeout(() => this.#report(true), wait); return; }
      this.#reported = performance.now();
      this.dispatchEvent(new CustomEvent('crop-moved', {detail: {...this.#scene.frame, round: this.#scene.round}}));
    }

    #distance([a, b]) { return Math.hypot((a.x - b.x) * this.#w, (a.y - b.y) * this.#h); }

    #middle([a, b]) { return {x: (a.x + b.x) / 2, y: (a.y + b.y) / 2}; }
  }

  if (!customElements.get('artwork-crop-stage')) customElements.define('artwork-crop-stage', CropStage);
})();
