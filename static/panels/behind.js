// What belongs to other inputs than those that stand there is out of sight (behind.css): words, figures, marks and labels, until the new
// answer is there. What is refused says that the stages still show what was there before: they stay as they are, and answers about the
// craft stay, dimmed.

import { $ } from './shared/dom.js';

export function createBehind({ store }) {
  const { classList } = document.body;
  const update = () => {
    classList.toggle('behind', store.behind);
    classList.toggle('refused', store.behind && store.notice?.kind === 'refused');
    classList.toggle('told-behind', store.toldBehind);
    classList.toggle('feel-behind', store.feelBehind);
    classList.toggle('shot-behind', store.shotBehind);
    classList.toggle('ship-behind', store.shipBehind);
    classList.toggle('ship-refused', store.shipBehind && Boolean(store.ship.problem));
    if (store.behind) $('#heard').replaceChildren(); // what was read out is no longer so
  };
  store.on('behind', update);
  store.on('told', update);
  store.on('notice', update);
  store.on('ship', update);
  update();
}
