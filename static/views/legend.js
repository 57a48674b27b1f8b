// What the arrows of a stage are, by colour and head: in its lower left corner, where there is room.

import { tr } from '../state/language.js';
import { make, svg } from './overlay.js';

const LEAST = { width: 460, height: 220 }; // of a stage that has room for it
const EDGE_PX = 12;
const HEADS = { velocity: 'M14 1.5L21 6L14 10.5', centrifugal: 'M14 2L21 6L14 10Z', coriolis: 'M15 1.5L21 6' };

export class Legend {
  constructor(dom) {
    this.element = make('ul', 'stage-legend', dom.box);
    this.element.setAttribute('aria-hidden', 'true'); // the switches say it
    this.element.hidden = true;
    this.spot = this.room = null; // where it lies, while it is seen; with all it may say
    this.said = '';
  }

  // `kinds` as of state/arrow_kinds.js, all that may be drawn; `of`: whose they are, where of one motion alone.
  show(kinds, of, rect, grown) {
    const shown = rect.width >= LEAST.width && rect.height >= LEAST.height ? kinds : [];
    const said = JSON.stringify([shown.map(({ show }) => show), of, rect.width, rect.height, grown]);
    if (said === this.said) return;
    this.said = said;
    Object.assign(this, { kinds: shown, of, drawnKey: null });
    this.element.hidden = !shown.length;
    this.element.replaceChildren();
    this.items = shown.map(kind => this.entry(kind));
    if (shown.length && of) make('li', '', this.element).textContent = tr('of {motion}', { motion: of });
    if (!shown.length) this.spot = this.room = null;
    else {
      const [w, h] = [this.element.offsetWidth, this.element.offsetHeight];
      this.room = { x: EDGE_PX, y: rect.height - h - EDGE_PX, w, h };
      this.element.style.transform = `translate(${this.room.x}px, ${this.room.y}px)`;
    }
  }

  // Every frame: only kinds of which an arrow is drawn now are named. `drawn` {velocity, centrifugal, coriolis}.
  tell(drawn) {
    const { kinds, items } = this;
    let key = 0;
    for (let k = 0; k < kinds.length; k += 1) if (drawn[kinds[k].show]) key |= 1 << k;
    if (key === this.drawnKey) return;
    this.drawnKey = key;
    for (let k = 0; k < kinds.length; k += 1) items[k].hidden = !(key & (1 << k));
    this.element.hidden = !key;
    this.spot = key ? this.room : null;
  }

  hide() {
    this.element.hidden = true;
    this.spot = null;
    this.said = '';
  }

  // Into a context whose origin is the stage's upper left corner. `write(text, x, y)` gives a text's width.
  ink(context, write) {
    const { x, y, h } = this.spot;
    let at = x + 9;
    for (const { show, word, color } of this.kinds.filter((_, k) => !this.items[k].hidden)) {
      context.save();
      context.translate(at, y + h / 2 - 6);
      Object.assign(context, { strokeStyle: color, fillStyle: color, lineWidth: 1.8 });
      context.stroke(new Path2D('M1 6H20'));
      context.stroke(new Path2D(HEADS[show]));
      if (show === 'centrifugal') context.fill(new Path2D(HEADS[show]));
      context.restore();
      at += 28 + write(tr(word), at + 28, y + 3) + 14;
    }
    if (this.of) write(tr('of {motion}', { motion: this.of }), at, y + 3);
  }

  entry({ show, word, color }) {
    const item = make('li', '', this.element);
    const arrow = svg('svg', { viewBox: '0 0 22 12', fill: show === 'centrifugal' ? color : 'none', stroke: color, 'stroke-width': 1.8 }, item);
    svg('path', { d: 'M1 6H20' }, arrow);
    svg('path', { d: HEADS[show] }, arrow);
    make('span', '', item).textContent = tr(word);
    return item;
  }
}
