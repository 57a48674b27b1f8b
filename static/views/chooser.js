// The chooser of camera presets (a plan of the wheel with their letters) and the choice of what is measured.

import { tr, trAs, trLater } from '../state/language.js';
import { button, make, svg } from './overlay.js';
import { PRESETS, lowered, presetName } from './camera_presets.js';
import { homeAnswer, homeBeside } from '../state/homes.js';
import { shapeFacts } from '../state/shapes.js';
import { NO_CAMERAS } from '../state/store.js';
import { showCamera } from './show_camera.js';

const PLAN = { size: 148, middle: 74, radius: 56 };
const MEASURES = { off: trLater('Off'), dimensions: trLater('Dimensions'), tape: trLater('Tape') };

export function attachPresets(dom, store) {
  const other = dom.frame === 'aboard' ? 'outside' : 'aboard';
  // of the habitat that is seen here
  const nameOf = letter => {
    const answer = homeAnswer(store.answer, (dom.frame === 'outside' && homeBeside(store)) || 0);
    return presetName(letter, answer && shapeFacts(store.fields, answer.scene.habitat));
  };
  const kept = () => store.view.cameras[dom.frame];
  const choose = preset => {
    if (seesOwn(dom, store)) store.setShot({ camera: { ...store.shot.camera, shown: false } });
    store.look({ presets: { ...store.view.presets, [dom.frame]: preset }, cameras: { ...store.view.cameras, [dom.frame]: null } });
  };
  const popover = attachPopover(dom.preset, dom, tr('Seat, {stage}', { stage: dom.name }), panel => {
    const focused = panel.contains(document.activeElement);
    panel.replaceChildren();
    const now = store.view.presets[dom.frame];
    const set = make('div', 'seat-choice', panel);
    set.setAttribute('role', 'radiogroup');
    set.setAttribute('aria-label', tr('Where {stage} is seen from', { stage: dom.name }));
    drawPlan(make('div', 'seat-plan', set));
    const list = make('div', 'seat-list', set);
    for (const [letter, { plan }] of Object.entries(PRESETS))
      presetButton(list, letter, { name: nameOf(letter), plan }, now === letter && !kept(), () => choose(letter));
    ownCamera(panel, dom, store, () => popover.hide({ refocus: false }));
    const both = button(panel, 'seat-both', tr('Same seat in both'));
    both.disabled = store.view.presets[other] === now;
    both.addEventListener('click', () => store.look({ presets: { aboard: now, outside: now }, cameras: NO_CAMERAS }));
    if (focused) (panel.querySelector('[aria-checked="true"]') ?? panel.querySelector('[role="radio"]')).focus();
  });
  let labelled = null;
  const label = () => {
    const name = seesOwn(dom, store) ? tr(MINE) : kept() ? tr(KEPT) : nameOf(store.view.presets[dom.frame]);
    popover.refresh();
    if (name === labelled) return;
    labelled = name;
    dom.preset.lastElementChild.textContent = name;
    dom.preset.setAttribute('aria-label', tr('Seat: {name}', { name }));
  };
  for (const topic of ['view', 'answer', 'shot']) store.on(topic, label);
  label();
  return popover;
}

const MINE = trLater('My camera'),
  KEPT = trLater('As kept in the talk');
const seesOwn = ({ frame }, { shot: { camera } }) => Boolean(camera?.shown && camera.own.view === frame);

// A camera of one's own: looked through here, or first to be made, at place 5.
function ownCamera(panel, dom, store, leave) {
  const { camera } = store.shot,
    here = camera?.own.view === dom.frame;
  if (!here && (camera || store.view.fixed)) return;
  const mine = button(panel, 'seat-both', tr(MINE));
  if (here) mine.setAttribute('aria-pressed', String(camera.shown));
  mine.addEventListener('click', () => {
    if (here) return store.setShot({ camera: { ...camera, shown: !camera.shown } });
    store.look({ place: 5, folded: false });
    leave();
    showCamera();
  });
}

function drawPlan(parent) {
  const { size, middle, radius } = PLAN;
  const plan = svg('svg', { viewBox: `0 0 ${size} ${size}`, width: size, height: size, fill: 'none', stroke: 'currentColor', 'aria-hidden': 'true' }, parent);
  svg('circle', { cx: middle, cy: middle, r: radius, 'stroke-width': 1.5 }, plan);
  svg('path', { d: `M${middle} ${middle + radius}v-11`, 'stroke-width': 3 }, plan);
}

// One button: its letter and words in the list, its letter again on the plan beside it.
function presetButton(parent, letter, preset, chosen, choose) {
  const spot = button(parent, 'seat-row');
  const dot = make('span', 'seat-spot', spot);
  dot.textContent = letter;
  spot.append(`${letter}  ${lowered(preset.name)}`);
  spot.setAttribute('role', 'radio');
  spot.setAttribute('aria-checked', String(chosen));
  spot.setAttribute('aria-label', `${letter}, ${lowered(preset.name)}`);
  spot.tabIndex = chosen ? 0 : -1;
  dot.style.left = `${PLAN.middle + preset.plan[0]}px`;
  dot.style.top = `${PLAN.middle + preset.plan[1]}px`;
  spot.addEventListener('click', choose);
}

/** `tape` {places(), lay(which, end) → what it tells}: its two ends by name, for whoever has no pointer. */
export function attachMeasureChoice(dom, store, tape) {
  const popover = attachPopover(dom.measure, dom, tr('Measure, {stage}', { stage: dom.name }), panel => {
    const focused = panel.contains(document.activeElement);
    panel.replaceChildren();
    const set = make('div', 'measure-choice', panel);
    set.setAttribute('role', 'radiogroup');
    set.setAttribute('aria-label', tr('Measure'));
    for (const [kind, name] of Object.entries(MEASURES)) {
      const chosen = store.view.measure === kind;
      const choice = button(set, 'measure-kind', tr(name));
      choice.setAttribute('role', 'radio');
      choice.setAttribute('aria-checked', String(chosen));
      choice.tabIndex = chosen ? 0 : -1;
      choice.addEventListener('click', () => store.look({ measure: kind }));
    }
    if (store.view.measure === 'tape') tapeByName(panel, tape);
    if (focused) (panel.querySelector('[aria-checked="true"]') ?? panel.querySelector('[role="radio"]')).focus();
  });
  store.on('view', () => popover.refresh());
  return popover;
}

function tapeByName(panel, tape) {
  const places = tape.places();
  const part = make('div', 'tape-ends', panel);
  make('p', '', part).textContent = tr('Click two places on the stage, or choose them here.');
  const lists = [trAs('of the tape', 'From'), trAs('of the tape', 'To')].map(word => {
    const row = make('label', '', part);
    make('span', '', row).textContent = word;
    const list = make('select', '', row);
    make('option', '', list).textContent = tr('choose a place');
    for (const { say } of places) make('option', '', list).textContent = say;
    return list;
  });
  const says = make('p', 'tape-says', part);
  says.setAttribute('role', 'status');
  lists.forEach((list, which) => {
    list.addEventListener('change', () => {
      if (list.selectedIndex) says.textContent = tape.lay(which, places[list.selectedIndex - 1].end);
    });
  });
}

export function attachAlone(dom, store) {
  const label = () => {
    const alone = store.view.alone === dom.frame;
    dom.alone.setAttribute('aria-pressed', String(alone));
    dom.alone.textContent = alone ? trAs('stages', 'Both') : tr('Maximise');
  };
  dom.alone.addEventListener('click', () => store.look({ alone: store.view.alone === dom.frame ? null : dom.frame }));
  dom.box.addEventListener('keydown', event => {
    if (event.key === 'Escape' && store.view.alone === dom.frame) store.look({ alone: null });
  });
  store.on('view', label);
  label();
}

// Holds the turning still, on both stages.
export function attachSteady({ steady }, store) {
  if (!steady) return;
  steady.title = tr('Stop the turning (Z)');
  steady.setAttribute('aria-label', tr('Stop the turning'));
  const label = () => steady.setAttribute('aria-pressed', String(store.view.steady));
  steady.addEventListener('click', () => store.look({ steady: !store.view.steady }));
  store.on('view', label);
  label();
}

// A small panel that a stage button opens. Escape, a press elsewhere or the button itself closes it; focus goes back.

// `dom` is the half it belongs to; it lies over both halves, so that a low one does not cut it.
function attachPopover(opener, dom, label, fill) {
  const panel = make('div', 'stage-popover', dom.element);
  panel.setAttribute('role', 'dialog');
  panel.setAttribute('aria-label', label);
  panel.hidden = true;

  const popover = {
    panel,
    get open() {
      return !panel.hidden;
    },
    show() {
      fill(panel);
      panel.hidden = false;
      place();
      opener.setAttribute('aria-expanded', 'true');
      (panel.querySelector('[aria-checked="true"]') ?? panel.querySelector('button'))?.focus();
      document.addEventListener('pointerdown', elsewhere, true);
    },
    hide({ refocus = true } = {}) {
      if (panel.hidden) return;
      panel.hidden = true;
      opener.setAttribute('aria-expanded', 'false');
      document.removeEventListener('pointerdown', elsewhere, true);
      if (refocus) opener.focus();
    },
    refresh() {
      if (panel.hidden) return;
      fill(panel);
      place();
    },
  };

  function place() {
    const whole = dom.element.getBoundingClientRect();
    const at = opener.getBoundingClientRect();
    panel.style.right = `${Math.max(8, whole.right - Math.max(at.right, whole.left + panel.offsetWidth + 8))}px`;
    panel.style.top = `${Math.max(8, Math.min(at.bottom - whole.top + 8, whole.height - panel.offsetHeight - 8))}px`;
  }

  function elsewhere(event) {
    if (!panel.contains(event.target) && !opener.contains(event.target)) popover.hide({ refocus: false });
  }
  opener.addEventListener('click', () => (popover.open ? popover.hide() : popover.show()));
  panel.addEventListener('keydown', event => {
    event.stopPropagation();
    if (event.key === 'Escape') popover.hide();
    else rove(panel, event);
  });
  return popover;
}

// One tab stop for a set of choices; arrows move and choose.
function rove(panel, event) {
  const by = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
  const choices = [...panel.querySelectorAll('[role="radio"]')];
  const index = choices.indexOf(document.activeElement);
  if (!by || index < 0) return;
  event.preventDefault();
  choices[(index + by + choices.length) % choices.length].click();
  panel.querySelector('[aria-checked="true"]')?.focus();
}
