// The deck's grid through the camera of the frame in hand, as the server gives it in pixels: once it fits the floor in the picture, the camera is
// the one that took it.

import { tr } from '../../state/language.js';
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
    const figures = { each: length(grid.step_m), strong: length(5 * grid.step_m) };
    return grid.upright
      ? tr('The deck’s grid: lines each {each}, strong each {strong}; the upright stands where it looks, {tall} tall.', {
          ...figures,
          tall: length(grid.upright_m),
        })
      : tr('The deck’s grid: lines each {each}, strong each {strong}.', figures);
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
