// The throw that arrives for each flight time, drawn: its speed and its elevation. The ways are points on the curves; a press or a drag keeps that
// flight time, and so do the arrows.

import { inSigns, tr, trLater } from '../../state/language.js';
import { drawnPart, roundFigures, throwAfter } from '../../state/by_flight.js';
import { fieldOf } from '../../state/fields.js';
import { clamp } from '../../state/scale.js';
import { showQuantity, shownUnit, toShown } from '../../state/units.js';
import { elevationWords, headingWords } from '../../state/words.js';
import { h, onDrag, s, setAttribute, setChildren, setText } from '../shared/dom.js';

const WIDE = { least: 220, first: 320 },
  LEFT = 34,
  RIGHT = 8,
  SPEED = { top: 18, high: 84 },
  ELEVATION = { top: 132, high: 60 },
  HIGH = 232;
const STEP = 0.01, // of the part that is drawn
  LARGE = 10;
const ASK = trLater('Press the curve, or drag along it, to keep that flight time.');

export function createByFlight({ store }) {
  const ground = s('g', { class: 'flight-ground' }),
    curves = s('g', {}),
    now = s('g', { class: 'flight-now' });
  const svg = s(
    'svg',
    { class: 'flight-plot', role: 'img', 'aria-label': tr('Speed and elevation of the throw that arrives, by its flight time') },
    ground,
    curves,
    now,
  );
  const grip = h('span', {
    class: 'ring-grip flight-grip',
    role: 'slider',
    tabindex: 0,
    'aria-label': tr('Flight time to be kept'),
    onkeydown,
  });
  const box = h('div', { class: 'flight-box' }, svg, grip),
    caption = h('p', { class: 'small flight-at' });
  const element = h('div', {}, h('h4', { class: 'flight-title' }, tr('Throws by flight time')), box, caption);
  let part = null, // that is drawn
    wide = WIDE.first,
    pointed_s = null;

  const curve = () => store.shot.answer?.by_flight;
  const ways = () => store.shot.answer?.ways ?? [];
  const x = time_s => LEFT + ((time_s - part.from_s) / (part.to_s - part.from_s)) * (wide - LEFT - RIGHT);
  const y = {
    speed_m_s: speed => SPEED.top + SPEED.high * (1 - speed / part.most_m_s),
    elevation_deg: degrees => ELEVATION.top + (ELEVATION.high * (90 - degrees)) / (90 - part.least_deg),
  };
  const timeAt = event => {
    const { left, width } = svg.getBoundingClientRect(),
      share = (((event.clientX - left) * wide) / width - LEFT) / (wide - LEFT - RIGHT);
    return part.from_s + clamp(share, 0, 1) * (part.to_s - part.from_s);
  };
  const kept_s = () => store.shot.aim.fixed.flight_s ?? ways()[store.shot.chosen]?.flight_s ?? null;

  function keep(time_s, live) {
    const { min } = fieldOf(store.fields, 'aim.fixed.flight_s'),
      flight_s = Number(Math.max(min ?? 0, time_s).toPrecision(4));
    store.setShot({ aim: { ...store.shot.aim, fixed: { flight_s } } }, { live });
  }
  onDrag(svg, {
    start: event => keep(timeAt(event), true),
    move: event => keep(timeAt(event), true),
    end: event => keep(timeAt(event), false),
  });
  onDrag(grip, {
    start(event) {
      event.preventDefault();
      grip.focus({ preventScroll: true });
    },
    move: (event, _down, moved) => moved && keep(timeAt(event), true),
    end: (event, moved) => moved && keep(timeAt(event), false),
  });
  svg.addEventListener('pointermove', event => point(timeAt(event)));
  svg.addEventListener('pointerleave', () => point(null));
  function point(time_s) {
    pointed_s = time_s;
    drawNow();
  }

  function onkeydown(event) {
    const step = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1 }[event.key];
    if (!step || event.ctrlKey || event.metaKey || event.altKey) return;
    const by = step * STEP * (event.shiftKey ? LARGE : 1) * (part.to_s - part.from_s);
    keep(clamp((kept_s() ?? part.from_s) + by, part.from_s, part.to_s), false);
    event.preventDefault();
    event.stopPropagation();
  }

  function words(time_s) {
    const thrown = time_s === null ? null : throwAfter(curve(), time_s);
    if (!thrown) return tr(ASK);
    const { units } = store.view,
      figures = [showQuantity(thrown.speed_m_s, 'm/s', units), elevationWords(thrown.elevation_deg), headingWords(thrown.heading_deg)];
    return tr('After {time}: {figures}.', { time: showQuantity(time_s, 's', units), figures: figures.join(', ') });
  }

  function drawGround() {
    const { units } = store.view,
      bottom = ELEVATION.top + ELEVATION.high,
      per = toShown(1, 'm/s', units);
    const across = (at, say) => [
      s('path', { d: `M${LEFT} ${at.toFixed(1)}H${wide - RIGHT}` }),
      s('text', { x: LEFT - 5, y: (at + 4).toFixed(1), 'text-anchor': 'end' }, say),
    ];
    setChildren(
      ground,
      ...roundFigures(0, part.most_m_s * per, 3).flatMap(value => across(y.speed_m_s(value / per), inSigns(String(value)))),
      ...(part.least_deg ? [-90, 0, 90] : [0, 45, 90]).flatMap(value => across(y.elevation_deg(value), `${String(value).replace('-', '−')}°`)),
      ...roundFigures(part.from_s, part.to_s, 5).flatMap(value => [
        s('path', { d: `M${x(value).toFixed(1)} ${SPEED.top}V${bottom}` }),
        s('text', { x: x(value).toFixed(1), y: bottom + 16, 'text-anchor': 'middle' }, inSigns(String(value))),
      ]),
      s('text', { x: 0, y: 11 }, tr('speed, {unit}', { unit: shownUnit('m/s', units) })),
      s('text', { x: 0, y: ELEVATION.top - 12 }, tr('elevation')),
      s('text', { x: wide - RIGHT, y: HIGH - 4, 'text-anchor': 'end' }, tr('flight time, s')),
    );
  }

  function drawCurves() {
    const { flight_s } = curve();
    const line = name => {
      const points = Array.from(flight_s, (time_s, i) => [time_s, curve()[name][i]]).filter(([time_s]) => time_s >= part.from_s && time_s <= part.to_s);
      return s('path', { class: 'flight-line', d: `M${points.map(([time_s, value]) => `${x(time_s).toFixed(1)} ${y[name](value).toFixed(1)}`).join('L')}` });
    };
    const dots = ways().flatMap((way, k) =>
      ['speed_m_s', 'elevation_deg'].map(name =>
        s('circle', {
          class: k === store.shot.chosen ? 'flight-way chosen' : 'flight-way',
          cx: x(way.flight_s).toFixed(1),
          cy: y[name](way[name]).toFixed(1),
          r: k === store.shot.chosen ? 5 : 3.5,
        }),
      ),
    );
    setChildren(curves, line('speed_m_s'), line('elevation_deg'), ...dots);
  }

  function drawNow() {
    if (!part) return;
    const time_s = pointed_s ?? kept_s();
    setChildren(
      now,
      time_s === null ? null : s('path', { d: `M${x(clamp(time_s, part.from_s, part.to_s)).toFixed(1)} ${SPEED.top}V${ELEVATION.top + ELEVATION.high}` }),
    );
    setText(caption, words(pointed_s));
    const at_s = kept_s() ?? part.from_s;
    grip.style.left = `${((100 * x(clamp(at_s, part.from_s, part.to_s))) / wide).toFixed(2)}%`;
    for (const [name, value] of Object.entries({ valuemin: part.from_s, valuemax: part.to_s, valuenow: at_s, valuetext: words(at_s) }))
      setAttribute(grip, `aria-${name}`, value);
  }

  function update() {
    const { fixed } = store.shot.aim,
      speeds = [...ways().map(way => way.speed_m_s), ...(fixed.speed_m_s ? [fixed.speed_m_s] : [])];
    part = curve()?.flight_s.length > 1 ? drawnPart(curve(), speeds) : null;
    setAttribute(element, 'hidden', part === null);
    if (!part) return;
    wide = Math.max(WIDE.least, element.clientWidth || WIDE.first);
    setAttribute(svg, 'viewBox', `0 0 ${wide} ${HIGH}`);
    drawGround();
    drawCurves();
    drawNow();
  }
  return { element, update };
}
