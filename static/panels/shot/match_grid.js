// The deck's grid through the camera of the frame in hand, as the server gives it in pixels: once it fits the floor in the picture, the camera is
// the one that took it.

import { gridRequest } from '../../state/match_request.js';
import { createNewest } from '../../state/newest.js';
import { lengthWords } from '../../state/units.js';
import { h, setAttribute, setText } from '../shared/dom.js';

/** get() → the match; changed(): the grid did. */
export function createMatchGrid({ store, client, get, changed }) {
  const element = h('p', { class: 'small match-grid', 'aria-live': 'polite' });
  let grid = null,
    problem = null,
    lastQuestion = 'null';
  const { want, drop } = createNewest({
    request: () => gridRequest(get(), store.read),
    ask: (body, signal) => client.matchGrid(body, signal),
    answered: next => settle(next, null),
    failed: why => settle(null, why),
  });

  function settle(next, why) {
    [grid, problem] = [next, why];
    changed();
  }

  function words() {
    if (problem) return problem.message;
    if (!grid) return '';
    const length = metres => lengthWords(metres, store.view.units);
    const upright = grid.upright ? `; the upright stands where it looks, ${length(grid.upright_m)} tall` : '';
    return `The deck’s grid: lines each ${length(grid.step_m)}, strong each ${length(5 * grid.step_m)}${upright}.`;
  }

  function update() {
    const body = gridRequest(get(), store.read),
      key = JSON.stringify(body);
    if (key !== lastQuestion) {
      lastQuestion = key;
      if (body) want();
      else {
        drop();
        [grid, problem] = [null, null];
      }
    }
    setAttribute(element, 'hidden', body === null);
    setText(element, words());
  }
  return { element, update, lines: () => grid };
}
