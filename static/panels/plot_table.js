// The same as the plot in figures: where each motion lands, when, how high it went, and plain gravity's answer.

import { motionName } from '../state/fields.js';
import { showQuantity } from '../state/units.js';
import { h } from './dom.js';

export function createTable({ store }) {
  const body = h('tbody', {});
  const element = h(
    'table',
    { hidden: true },
    h(
      'thead',
      {},
      h(
        'tr',
        {},
        h('th', { scope: 'col' }, 'Motion'),
        ...['lands', 'after', 'highest', 'plain gravity'].map(word => h('th', { scope: 'col', class: 'r' }, word)),
      ),
    ),
    body,
  );
  function update() {
    const show = (value, unit = 'm') => (typeof value === 'number' ? showQuantity(value, unit, store.view.units) : '');
    body.replaceChildren(
      ...(store.answer?.motions ?? []).map((motion, index) =>
        h(
          'tr',
          {},
          h('th', { scope: 'row' }, motionName(store, index)),
          h('td', { class: 'r' }, motion.landing ? show(motion.landing.drift_m) : 'does not'),
          h('td', { class: 'r' }, show(motion.landing?.time_s, 's')),
          h('td', { class: 'r' }, show(motion.apex?.height_m)),
          h('td', { class: 'r' }, show(motion.companion?.landing?.drift_m)),
        ),
      ),
    );
  }
  return { element, update };
}
