// The seat chooser (a plan of the wheel with lettered seats) and the choice of what is measured.

import { button, make, svg } from './overlay.js';
import { attachPopover } from './popover.js';
import { seatName, SEATS } from './camera_presets.js';
import { shapeFacts } from '../state/shapes.js';

const PLAN = { size: 148, middle: 74, radius: 56 };
const MEASURES = { off: 'Off', dimensions: 'Dimensions', tape: 'Tape: two clicks' };

export function attachSeats(dom, store) {
  const other = dom.frame === 'aboard' ? 'outside' : 'aboard';
  const nameOf = (letter) => seatName(letter, store.answer && shapeFacts(store.fields, store.answer.scene.habitat));
  const sit = (seat) => store.look({ seat: { ...store.view.seat, [dom.frame]: seat } });
  const popover = attachPopover(dom.seat, dom, `Seat, ${dom.name}`, (panel) => {
    const focused = panel.contains(document.activeElement);
    panel.replaceChildren();
    const now = store.view.seat[dom.frame];
    const set = make('div', 'seat-choice', panel);
    set.setAttribute('role', 'radiogroup');
    set.setAttribute('aria-label', `Where ${dom.name} is seen from`);
    drawPlan(make('div', 'seat-plan', set));
    const seats = make('div', 'seat-list', set);
    for (const [letter, { plan }] of Object.entries(SEATS)) seatButton(seats, letter, { name: nameOf(letter), plan }, now === letter, () => sit(letter));
    const both = button(panel, 'seat-both', 'Same seat in both');
    both.disabled = store.view.seat[other] === now;
    both.addEventListener('click', () => store.look({ seat: { aboard: now, outside: now } }));
    if (focused) panel.querySelector('[aria-checked="true"]').focus();
  });
  let labelled = null;
  const label = () => {
    const name = nameOf(store.view.seat[dom.frame]);
    popover.refresh();
    if (name === labelled) return;
    labelled = name;
    dom.seat.lastElementChild.textContent = name;
    dom.seat.setAttribute('aria-label', `Seat: ${name}`);
  };
  for (const topic of ['view', 'answer']) store.on(topic, label);
  label();
  return popover;
}

function drawPlan(parent) {
  const { size, middle, radius } = PLAN;
  const plan = svg('svg', { viewBox: `0 0 ${size} ${size}`, width: size, height: size, fill: 'none', stroke: 'currentColor', 'aria-hidden': 'true' }, parent);
  svg('circle', { cx: middle, cy: middle, r: radius, 'stroke-width': 1.5 }, plan);
  svg('path', { d: `M${middle} ${middle + radius}v-11`, 'stroke-width': 3 }, plan);
}

// One button: its letter and words in the list, its letter again on the plan beside it.
function seatButton(parent, letter, seat, chosen, choose) {
  const spot = button(parent, 'seat-row');
  const dot = make('span', 'seat-spot', spot);
  dot.textContent = letter;
  spot.append(`${letter}  ${seat.name.toLowerCase()}`);
  spot.setAttribute('role', 'radio');
  spot.setAttribute('aria-checked', String(chosen));
  spot.setAttribute('aria-label', `${letter}, ${seat.name.toLowerCase()}`);
  spot.tabIndex = chosen ? 0 : -1;
  dot.style.left = `${PLAN.middle + seat.plan[0]}px`;
  dot.style.top = `${PLAN.middle + seat.plan[1]}px`;
  spot.addEventListener('click', choose);
}

export function attachMeasureChoice(dom, store) {
  const popover = attachPopover(dom.measure, dom, `Measure, ${dom.name}`, (panel) => {
    const focused = panel.contains(document.activeElement);
    panel.replaceChildren();
    const set = make('div', 'measure-choice', panel);
    set.setAttribute('role', 'radiogroup');
    set.setAttribute('aria-label', 'Measure');
    for (const [kind, name] of Object.entries(MEASURES)) {
      const chosen = store.view.measure === kind;
      const choice = button(set, 'measure-kind', name);
      choice.setAttribute('role', 'radio');
      choice.setAttribute('aria-checked', String(chosen));
      choice.tabIndex = chosen ? 0 : -1;
      choice.addEventListener('click', () => store.look({ measure: kind }));
    }
    if (focused) panel.querySelector('[aria-checked="true"]').focus();
  });
  store.on('view', () => popover.refresh());
  return popover;
}

export function attachAlone(dom, store) {
  const label = () => {
    const alone = store.view.alone === dom.frame;
    dom.alone.setAttribute('aria-pressed', String(alone));
    dom.alone.textContent = alone ? 'Both' : 'Alone';
  };
  dom.alone.addEventListener('click', () => store.look({ alone: store.view.alone === dom.frame ? null : dom.frame }));
  dom.box.addEventListener('keydown', (event) => {
    if (event.key === 'Escape' && store.view.alone === dom.frame) store.look({ alone: null });
  });
  store.on('view', label);
  label();
}
