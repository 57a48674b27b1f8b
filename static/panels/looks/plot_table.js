// The same as the plot in figures: where each motion lands, when, how high it went, and plain gravity's answer.

import { motionName } from '../../state/fields.js';
import { showQuantity } from '../../state/units.js';
import { h } from '../shared/dom.js';
import { lastSeen } from '../shared/ends.js';

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
  const ended = (motion, show) => {
    const seen = lastSeen(motion);
    const where = motion.landing ? show(seen.drift_m) : (seen?.say ?? '');
    return [h('td', { class: 'r' }, where), h('td', { class: 'r' }, show(seen?.time_s, 's'))];
  };
  function update() {
    const show = (value, unit = 'm') => (typeof value === 'number' ? showQuantity(value, unit, store.view.units) : '');
    body.replaceChildren(
      ...(store.answer?.motions ?? []).map((motion, index) =>
        h(
          'tr',
          {},
          h('th', { scope: 'row' }, motionName(store, index)),
          ...ended(motion, show),
          h('td', { class: 'r' }, show(motion.apex?.height_m)),
          h('td', { class: 'r' }, show(motion.companion?.landing?.drift_m)),
        ),
      ),
    );
  }
  return { element, update };
}
