// The ring on the map: this habitat. Dragged, or moved by the arrows, it sets radius and spin; with something held, one dial only,
// and the other follows.

import { fieldOf, shownOf } from '../state/fields.js';
import { clamp, makeScale, roundTo } from '../state/scale.js';
import { formatFigure, shownStep, shownUnit, toShown, withUnit } from '../state/units.js';
import { h, onDrag, setAttribute } from './dom.js';

export const RADIUS = 'habitat.radius_m',
  SPIN = 'habitat.spin_rpm';

/** frame() → the map's frame as it is drawn; say() → how the habitat lies to the limits, in words. */
export function createRing({ store, frame, say }) {
  const steps = Object.fromEntries([RADIUS, SPIN].map(path => [path, makeScale(shownOf(fieldOf(store.fields, path))).step]));
  const element = h('span', {
    class: 'ring-grip',
    role: 'slider',
    tabindex: 0,
    'aria-label': 'This habitat on the map: left and right for radius, up and down for spin',
    'aria-roledescription': 'slider of two ways',
    onkeydown,
  });

  function inRange(path, value, finer = false) {
    const { min, max } = fieldOf(store.fields, path),
      step = steps[path](value) / (finer ? 10 : 1);
    return clamp(roundTo(value, step), min, max);
  }

  // the dial that is moved leads; a held gravity or rim speed moves the other
  function lead(path, value, live) {
    const { hold, follower } = store.view,
      other = path === RADIUS ? SPIN : RADIUS;
    if (hold === 'spin' && path === SPIN) return;
    if ((hold === 'gravity' || hold === 'rim_speed') && follower !== other) store.look({ follower: other });
    store.set(path, value, { live });
  }

  function moveTo(radius, spin, finer) {
    if (store.view.hold) return lead(RADIUS, inRange(RADIUS, radius, finer), true);
    store.edit(
      draft => {
        draft.habitat.radius_m = inRange(RADIUS, radius, finer);
        draft.habitat.spin_rpm = inRange(SPIN, spin, finer);
      },
      { live: true },
    );
  }

  function onkeydown(event) {
    const path = { ArrowLeft: RADIUS, ArrowRight: RADIUS, ArrowDown: SPIN, ArrowUp: SPIN }[event.key];
    if (!path || event.ctrlKey || event.metaKey || event.altKey) return;
    const now = store.read(path),
      fine = steps[path](now) * (event.shiftKey ? 10 : 1);
    const next = now + (event.key === 'ArrowLeft' || event.key === 'ArrowDown' ? -fine : fine);
    lead(path, inRange(path, next), false);
    event.preventDefault();
    event.stopPropagation();
  }

  let grip = null;
  onDrag(element, {
    start(event) {
      event.preventDefault();
      element.focus({ preventScroll: true });
      grip = { x: frame().x(store.read(RADIUS)), y: frame().y(store.read(SPIN)), before: store.document };
    },
    move(event, down, moved) {
      if (!moved) return;
      const per = event.shiftKey ? 0.1 : 1; // with Shift a tenth as far
      moveTo(
        frame().radiusAt(grip.x + (event.clientX - down.clientX) * per),
        frame().spinAt(grip.y + (event.clientY - down.clientY) * per),
        event.shiftKey,
      );
    },
    end() {
      if (store.document !== grip.before) store.set(RADIUS, store.read(RADIUS));
    },
  });

  function update() {
    const { width, height, x, y } = frame(),
      [radius, spin] = [RADIUS, SPIN].map(store.read);
    element.style.left = `${((100 * x(radius)) / width).toFixed(3)}%`;
    element.style.top = `${((100 * y(spin)) / height).toFixed(3)}%`;
    const { min, max } = fieldOf(store.fields, RADIUS);
    const said = { valuemin: min, valuemax: max, valuenow: radius, valuetext: `${dialWords(store)}; ${say()}` };
    for (const [name, value] of Object.entries(said)) setAttribute(element, `aria-${name}`, value);
  }

  return { element, update };
}

/** Radius and spin with as many figures as the dials show. */
export function dialWords(store) {
  return habitatWords(store, store.read(RADIUS), store.read(SPIN));
}

export function habitatWords(store, radius_m, spin_rpm) {
  const { units } = store.view;
  const say = (path, value) => {
    const { unit } = fieldOf(store.fields, path),
      step = makeScale(shownOf(fieldOf(store.fields, path))).step(value);
    return withUnit(formatFigure(toShown(value, unit, units), shownStep(step, unit, units)), shownUnit(unit, units));
  };
  return `${say(RADIUS, radius_m)}, ${say(SPIN, spin_rpm)}`;
}
