// How the figures of what people would feel are written: on the page and on the sheet to print.

import { inSigns, locale, tr, trAs, trLater, trMany } from '../../state/language.js';
import { showQuantity, shownUnit, threeFigures, toShown, withUnit, written } from '../../state/units.js';

const NBSP = '\u00a0';
export const BOUNDS = {
  at_least: trLater('at least'),
  at_most: trLater('at most'),
  optimum: trLater('optimum'),
  reached: trLater('reached'),
  observed: trLater('observed'),
};
const STATES = {
  inside: trLater('inside'),
  'at the limit': trLater('at the limit'),
  beyond: trLater('beyond'),
  below: trLater('below'),
  equal: trLater('equal'),
  above: trLater('above'),
};
const SMALL = 0.09995, // under it three places are too few
  LEAST = 0.00005,
  LEAST_PUBLISHED = 1e-6; // six places are shown of a limit
const JUST = 1.05; // times a limit, under which the margin says more

/** Three figures, or four places under 0.1; a dash for what has no value here. */
export function figureWords(value, unit, units) {
  if (value === null || value === undefined) return '–';
  const shown = toShown(value, unit, units),
    size = Math.abs(shown);
  const figure =
    size >= SMALL || size === 0
      ? threeFigures(shown)
      : size < LEAST
        ? tr('under {figure}', { figure: inSigns(String(2 * LEAST)) })
        : inSigns(shown.toFixed(4)).replace('-', '−');
  return withUnit(figure, shownUnit(unit, units));
}

/** A published figure as it was published: 0.035 g, 1.8 rpm; in other units three figures of it. */
export function publishedWords(value, unit, units) {
  const shown = toShown(value, unit, units);
  if (shown !== value) return figureWords(value, unit, units);
  if (0 < value && value < LEAST_PUBLISHED) return withUnit(tr('under {figure}', { figure: inSigns(LEAST_PUBLISHED.toFixed(6)) }), shownUnit(unit, units));
  const figure = Number(value.toPrecision(4));
  return withUnit(figure.toLocaleString(locale, { maximumFractionDigits: 6 }).replace('-', '−'), shownUnit(unit, units));
}

/** Whether a row is a limit: others tell what was reached, observed or thought best. */
export function isLimit({ bound }) {
  return bound === 'at_least' || bound === 'at_most';
}

/** 'at most 6 rpm', 'reached 10 rpm' */
export function boundWords({ bound, limit, unit }, units) {
  return `${tr(BOUNDS[bound] ?? bound)} ${publishedWords(limit, unit, units)}`;
}

/** How a row lies to the value here: 'inside', 'at the limit', 'beyond, ×1.7', 'above', 'no value'. */
export function stateWords({ state, times, margin, unit }, units) {
  if (state === 'none') return tr('no value');
  if (state !== 'beyond') return stateWord(state);
  if (typeof times === 'number' && times >= JUST) return tr('beyond, ×{times}', { times: timesFigure(times) });
  return tr('beyond by {figure}', { figure: figureWords(Math.abs(margin ?? 0), unit, units) });
}

/** The state alone; where there is no value: none. */
export function stateWord(state) {
  if (state === 'none') return trAs('how a value lies to a limit', 'none');
  return STATES[state] ? tr(STATES[state]) : state;
}

function timesFigure(times) {
  return times < 9.95 ? inSigns(String(Number(times.toFixed(1)))) : written(times, 0);
}

/** 'Gilruth 1969'; a limit of the user's own is marked as theirs. */
export function studyWords({ study, year, mine }) {
  if (mine) {
    const unnamed = trAs('limit', 'your own');
    return study === unnamed ? study : tr('{study}, yours', { study });
  }
  return year ? `${study} ${year}` : study;
}

/** 'Spin, 3.00 rpm' */
export function quantityHeading({ label, unit, value }, units) {
  return value === null ? tr('{label}, no value here', { label }) : `${label}, ${figureWords(value, unit, units)}`;
}

/** What stands behind a row, as sentences: the citation and for whom it holds, to which the full stop is added, and what is to be noted. */
export function behindWords({ source, who, note, known_by: knownBy, mine }) {
  if (mine) return [tr('A limit of your own: no publication stands behind it.')];
  const said = [`${source}.`, who && tr('For whom: {who}.', { who }), note, knownBy === 'memory' && tr('From memory: look it up before you cite it.')];
  return said.filter(Boolean);
}

/** What all of it is said for: '30.0 m, 4.00 rpm; somebody 1.95 m tall who walks at 1.4 m/s and runs at 4.0 m/s.' */
export function premisesWords({ habitat, person }, units) {
  const show = (value, unit) => showQuantity(value, unit, units);
  const { axial_thrust_m_s2: thrust, outside_gravity_m_s2: room } = habitat;
  const turns = [
    show(habitat.radius_m, 'm'),
    show(habitat.spin_rpm, 'rpm'),
    thrust && tr('thrust {figure}', { figure: show(thrust, 'm/s²') }),
    room && tr('gravity of the room {figure}', { figure: show(room, 'm/s²') }),
  ];
  const paces = { walk: walkingPace(person.walk_m_s, units), run: walkingPace(person.run_m_s, units) };
  return tr('{habitat}; somebody {height} tall who walks at {walk} and runs at {run}.', {
    habitat: turns.filter(Boolean).join(', '),
    height: show(person.height_m, 'm'),
    ...paces,
  });
}

/** A pace as it was set: 1.4 m/s, 4.0 m/s; in other units three figures of it. */
export function walkingPace(value, units) {
  return units === 'si'
    ? `${inSigns(Number.isInteger(value) ? value.toFixed(1) : String(Number(value.toPrecision(3))))}${NBSP}m/s`
    : showQuantity(value, 'm/s', units);
}

/** The rows of one quantity, in the order of the answer. */
export function rowsOf(feel, name) {
  return feel.limits.filter(({ quantity }) => quantity === name);
}

/** A count of rows, and where some only tell what was seen, of the limits among them: 'one row', '15 rows, 7 of them limits'. */
export function countRows(rows) {
  const whole = rows.length === 1 ? tr('one row') : tr('{count}\u00a0rows', { count: rows.length }),
    limits = rows.filter(isLimit).length;
  if (limits === rows.length) return whole;
  if (!limits) return tr('{rows}, none of them limits', { rows: whole });
  return trMany('{rows}, {count} of them a limit', '{rows}, {count} of them limits', limits, { rows: whole });
}
