// A word the first time that something turns fast on the screen, with the button that stops it.

import { tr, trLater } from '../state/language.js';
import { isWarningDue } from '../state/first_time.js';

const SAY = trLater(
  'This turns fast on the screen, which makes some people feel ill. Z stops the turning at any time, and so does the button at the top of Outside.',
);

export function createComfort({ store, clock }) {
  const look = () => {
    const spin_rpm = store.answer?.scene.habitat.spin_rpm ?? 0;
    if (!isWarningDue(store.view, clock, spin_rpm) || matchMedia('(prefers-reduced-motion: reduce)').matches) return;
    store.look({ warned: true });
    store.tell({ kind: 'told', say: tr(SAY), does: { say: tr('Stop the turning'), act: () => store.look({ steady: true }) } });
  };
  clock.on(look);
  store.on('answer', look);
}
