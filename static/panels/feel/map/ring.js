// The ring on the map: this habitat. Dragged, or moved by the arrows, it sets radius and spin; with something held, one dial only,
// and the other follows.

import { tr } from '../../../state/language.js';
import { RADIUS, SPIN, fieldOf, shownOf } from '../../../state/fields.js';
import { clamp, makeScale, roundTo } from '../../../state/scale.js';
import { formatFigure, shownStep, shownUnit, toShown, withUnit } from '../../../state/units.js';
import { h, onDrag, setAttribute } from '../../shared/dom.js';

/** frame() → the map's frame as it is drawn; say() → how the habitat lies to the limits, in words. */
export function createRing({ store, frame, say }) {
  const steps = Object.fromEntries([RADIUS, SPIN].map(path => [path, makeScale(shownOf(fieldOf(store.fields, path))).step]));
  const element = h('span', {
    class: 'ring-grip',
    role: 'slider',
    tabindex: 0,
    'aria-label': tr('This habitat on the map: left and right for radius, up and down for spin'),
    'aria-roledescription': tr('slider of two ways'),
    onkeydown,
  });

  // in whole steps, and where the range ends in the last whole step inside it
  function inRange(path, value, habitat = habitatOf(store), finer = false) {
    const { min, max } = rangeOf(path, { fields: store.fields, habitat, ...store.view }),
      held = clamp(value, min, max),
      step = steps[path](held) / (finer ? 10 : 1),
      rounded = roundTo(held, step);
    return clamp(rounded > max ? roundTo(Math.floor(max / step) * step, step) : rounded, min, max);
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
    const now = habitatOf(store);
    if (store.view.hold) return lead(RADIUS, inRange(RADIUS, radius, now, finer), true);
    const radius_m = inRange(RADIUS, radius, { ...now, spin_rpm: 0 }, finer); // spin, which moves with it, gives way
    const spin_rpm = inRange(SPIN, spin, { ...now, radius_m }, finer);
    store.edit(
      draft => {
        draft.habitat.radius_m = radius_m;
        draft.habitat.spin_rpm = spin_rpm;
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
      moveTo(frame().radiusAt(grip.x + (event.clientX - down.clientX) * per), frame().spinAt(grip.y + (event.clientY - down.clientY) * per), event.shiftKey);
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

function habitatOf(store) {
  return { ...store.document.habitat, radius_m: store.read(RADIUS), spin_rpm: store.read(SPIN) };
}

/** {min, max} of the dial at `path`, radius in m or spin in rpm, while the other stays, or follows because something is `held`
    (gravity, m/s², or rim speed, m/s, as `hold` says): both in their fields' ranges, and no rim faster than one may be. */
export function rangeOf(path, { fields, habitat, hold, held }) {
  const [radius, spin] = [RADIUS, SPIN].map(one => fieldOf(fields, one)),
    { min, max } = path === RADIUS ? radius : spin,
    fastestRim = fields.greatest_rim_speed_m_s, // m/s, of what is farthest out
    rim = fields.holds.rim_speed,
    floors = (habitat.floors ?? []).map(floor => floor.radius_m ?? 0),
    later = (habitat.spin_ramp ?? []).map(point => point.spin_rpm);
  // also while the other follows: until it is answered the scene has it where it was
  const most = dialAt(rim, fastestRim, path, path === RADIUS ? Math.max(habitat.spin_rpm, ...later) : Math.max(habitat.radius_m, ...floors));
  const inside = (low, high) => ({ min: Math.max(min, low), max: Math.max(min, Math.min(max, most, high)) });
  const law = fields.holds[hold];
  if (!law || !(held > 0)) return inside(min, max);
  const outermost = crossing(law, held, rim, fastestRim);
  if (path === RADIUS) return inside(dialAt(law, held, RADIUS, spin.max), Math.min(outermost, dialAt(law, held, RADIUS, spin.min)));
  return inside(dialAt(law, held, SPIN, Math.min(outermost, radius.max)), dialAt(law, held, SPIN, radius.min));
}

/** Where the dial at `path` stands when what the server tells as a power `law` of radius and spin has a value, the other dial at `other`. */
function dialAt({ factor, radius_power: byRadius, spin_power: bySpin }, value, path, other) {
  const [own, its] = path === RADIUS ? [byRadius, bySpin] : [bySpin, byRadius];
  return (value / (factor * other ** its)) ** (1 / own);
}

/** The radius at which two laws have their values at one spin: on the map two straight lines cross. Infinite where they are parallel. */
function crossing(law, value, other, otherValue) {
  const power = law.spin_power * other.radius_power - other.spin_power * law.radius_power;
  if (power === 0) return Infinity;
  return ((otherValue / other.factor) ** law.spin_power / (value / law.factor) ** other.spin_power) ** (1 / power);
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
