// Place 5: is this shot right? Fetched with its first opening.

import { PLACE } from '../../state/shot.js';
import { $ } from '../shared/dom.js';
import { dressed } from '../shared/dressed.js';
import { createAim } from './aim.js';
import { createCamera } from './camera.js';
import { createLandings } from './landings.js';
import { createMatch } from './match.js';

/** Each part fills its own section and has update(). */
export async function createShot({ store, clock, client, heard, large, open, explain }) {
  await Promise.all(['static/shot.css', 'static/match.css'].map(dressed));
  const match = createMatch({ element: $('#shot-match'), store, client, heard, large, open, explain });
  const parts = [
    createAim({ element: $('#shot-aim'), store, clock, heard, large, explain }),
    createLandings({ element: $('#shot-landings'), store, client, heard, large, explain }),
    match,
    createCamera({ element: $('#shot-camera'), store, client, heard, match }),
  ];

  function update() {
    if (store.view.place === PLACE) parts.forEach(part => part.update());
  }
  for (const topic of ['document', 'answer', 'view', 'shot', 'behind']) store.on(topic, update);
  update();
}
