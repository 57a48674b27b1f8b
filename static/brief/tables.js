// The figures of the habitat, and the table of what happens to each motion.

import { inSigns, tr, trLater, trMany } from '../state/language.js';
import { motionName } from '../state/fields.js';
import { floorName, groundKey, shapeFacts } from '../state/shapes.js';
import { shownIndexes } from '../state/shown.js';
import { showQuantity, threeFigures, toShown, withUnit, shownUnit } from '../state/units.js';
import { roundOf } from '../state/ways.js';
import { h } from '../panels/shared/dom.js';
import { eventWords } from '../panels/timeline/lane_marks.js';

const MOST_EVENTS = 4; // of a motion, told one by one
const NOT_LISTED = new Set(['axis', 'time_limit']);

const GRAVITY_ON = { deck: trLater('Gravity on the deck'), floor: trLater('Gravity on the floor'), turntable: trLater('Gravity on the turntable') };

export function figuresOf(store) {
  const { answer, view, fields } = store,
    { habitat, scene } = answer,
    show = (value, unit) => showQuantity(value, unit, view.units);
  const pairs = [
    [tr('Shape'), shapeFacts(fields, scene.habitat).label],
    [tr('Radius'), show(scene.habitat.radius_m, 'm')],
    [tr('Spin'), show(scene.habitat.spin_rpm, 'rpm')],
    [tr(GRAVITY_ON[groundKey(shapeFacts(fields, scene.habitat).ground)]), `${threeFigures(habitat.felt_g)}\u00a0g, ${show(habitat.felt_m_s2, 'm/s²')}`],
    pulled(scene.habitat) ? [tr('Outward, from the spin alone'), `${threeFigures(habitat.deck_gravity_g)}\u00a0g`] : null,
    [tr('Rim speed'), show(habitat.rim_speed_m_s, 'm/s')],
    habitat.period_s ? [tr('One turn'), show(habitat.period_s, 's')] : null,
    ...habitat.decks
      .filter(deck => deck.radius_m <= scene.habitat.radius_m)
      .map((deck, i) => [floorName(deck, i), `${show(deck.radius_m, 'm')}, ${threeFigures(deck.felt_g)}\u00a0g`]),
    scene.habitat.axial_thrust_m_s2 ? [tr('Thrust'), show(scene.habitat.axial_thrust_m_s2, 'm/s²')] : null,
    [tr('Air'), airWords(scene.air, show, view.units)],
    ...cupsOf(store, show),
  ];
  return [h('dl', {}, ...pairs.filter(Boolean).flatMap(([term, words]) => [h('dt', {}, term), h('dd', {}, words)]))];
}

// by more than the spin
function pulled({ axial_thrust_m_s2: thrust, outside_gravity_m_s2: room }) {
  return Boolean(thrust || room);
}

function cupsOf(store, show) {
  const cups = shownIndexes(store)
    .map(index => [store.answer.scene.motions[index].target, index])
    .filter(([target]) => target);
  return cups.map(([{ along_m: along, axial_m: across, height_m: rim }, index]) => {
    const term = cups.length > 1 ? tr('Cup of {motion}', { motion: motionName(store, index) }) : tr('Cup');
    return [
      term,
      tr('{along} along, {across} across, its rim at {height}', { along: show(along ?? 0, 'm'), across: show(across ?? 0, 'm'), height: show(rim ?? 0, 'm') }),
    ];
  });
}

function airWords(air, show, units) {
  if (!air) return tr('none');
  return `${show(air.pressure_kpa, 'kPa')}, ${withUnit(threeFigures(toShown(air.temperature_c, '°C', units)), shownUnit('°C', units))}`;
}

/** Place, speed and angle at each event of each motion, and plain gravity's landing. */
export function tableOf(store) {
  const { answer, view } = store;
  const rows = shownIndexes(store).flatMap(index => motionRows(store, answer.motions[index], index));
  if (!rows.length) return [];
  const unit = shownUnit('m', view.units);
  const heads = [
    tr('time, s'),
    tr('spinward, {unit}', { unit }),
    tr('up, {unit}', { unit }),
    tr('across, {unit}', { unit }),
    tr('speed, {unit}', { unit: shownUnit('m/s', view.units) }),
    tr('angle, °'),
  ];
  const head = h(
    'tr',
    {},
    ...[tr('Motion'), tr('event')].map(word => h('th', { scope: 'col' }, word)),
    ...heads.map(word => h('th', { scope: 'col', class: 'r' }, word)),
  );
  return [h('table', {}, h('thead', {}, head), h('tbody', {}, ...rows)), h('p', { class: 'note' }, tr(NOTE))];
}

const NOTE = trLater(
  'Spinward and across are measured from the release along the ground where the thing then is, by the nearest way; across is along the axis, on a turntable outward. The angle is that of the motion from the upright of what it meets.',
);

function motionRows(store, motion, index) {
  const first = motion.events.find(event => event.kind === 'deck' || event.kind === 'floor');
  const events = motion.events.filter(({ kind }) => !NOT_LISTED.has(kind));
  const kept = events.slice(0, MOST_EVENTS),
    figure = (value, unit) => (typeof value === 'number' ? fixed(toShown(value, unit, store.view.units)) : '');
  const rows = kept.map(event => [
    event.kind === 'release' ? tr('release') : eventWords(event, event === first, store.fields.kinds[motion.kind].events),
    event,
  ]);
  const plain = motion.companion.landing;
  if (plain) rows.push([tr('lands under plain gravity'), { ...plain, height_m: null }]);
  const more = events.length - kept.length;
  const cells = rows.map(([words, event], k) =>
    h(
      'tr',
      {},
      k === 0 && h('th', { scope: 'rowgroup', rowspan: rows.length + (more > 0 ? 1 : 0) }, motionName(store, index)),
      h('td', {}, words),
      ...[
        fixed(event.time_s),
        [figure(event.way.spinward_m, 'm'), event.way.turns ? roundOf(event.way) : ''].filter(Boolean).join(', '),
        figure(event.height_m, 'm'),
        figure(event.way.axial_m, 'm'),
        figure(event.speed_m_s, 'm/s'),
        event.incidence_deg == null ? '' : inSigns(event.incidence_deg.toFixed(1)),
      ].map(words_ => h('td', { class: 'r' }, words_)),
    ),
  );
  if (more > 0)
    cells.push(
      h(
        'tr',
        {},
        h(
          'td',
          { colspan: 7 },
          trMany('and {count} more, the last at {time}', 'and {count} more, the last at {time}', more, { time: `${fixed(events.at(-1).time_s)}\u00a0s` }),
        ),
      ),
    );
  return cells;
}

function fixed(value) {
  const text = value.toFixed(Math.abs(value) >= 1000 ? 0 : 2);
  return inSigns(Number(text) === 0 ? text.replace('-', '') : text).replace('-', '−');
}
