// One stage as a flat plate, with its title and its words: what the stages are where there is no WebGL.

import { attachAlone } from './chooser.js';
import { svg } from './overlay.js';
import { LinePlate } from './line_plate.js';
import { Spoken, stageWords, turnedWords } from './spoken.js';

const ROOM = { top: 50, side: 36, foot: 44, arrow: 68, highest: 16, text: 14, paper: '#EEEFE9', named: true };

export class Plate {
  constructor(dom, store) {
    this.dom = dom;
    this.frame = dom.frame;
    const sheet = svg('svg', { class: 'stage-plate', 'aria-hidden': 'true' });
    this.lines = new LinePlate(sheet, dom.frame, ROOM);
    dom.view.before(sheet);
    dom.view.setAttribute('role', 'img');
    dom.seat.hidden = true;
    dom.measure.hidden = true;
    attachAlone(dom, store);
    this.spoken = new Spoken(dom);
  }

  fitInto(rect) {
    this.dom.box.hidden = !rect;
    if (!rect) return;
    const { x, y, width, height } = rect;
    Object.assign(this.dom.box.style, { transform: `translate(${x}px, ${y}px)`, width: `${width}px`, height: `${height}px` });
    this.lines.fitInto(rect);
  }

  read(model, shown, view) {
    Object.assign(this, { model, shown, view });
    this.lines.read(model, shown, view);
  }

  // `weigh`: draws what everybody feels and gives the words for it, or null.
  draw(time_s, playing, weigh = null) {
    this.lines.draw(time_s);
    const weights = weigh?.(this) ?? '';
    if (this.frame === 'outside') this.lines.say(turnedWords(this.model, time_s));
    this.spoken.say(stageWords(this.model, this.shown, this.frame, 'd', time_s, this.view.units, weights), performance.now(), playing);
  }
}
