// The scene's title, edited where it stands, and the stage direction that follows from the answer.

import { fieldOf } from '../state/fields.js';
import { shapeFacts } from '../state/shapes.js';
import { showQuantity, threeFigures } from '../state/units.js';
import { $, h, setText } from './shared/dom.js';

const UNTITLED = 'Untitled scene';

/** After another scene was opened: its name has the focus, or where that is out of sight a stage, so that what follows is about it.
 *  A reader who went on to something else meanwhile stays there. */
export function focusScene() {
  const now = document.activeElement;
  if (now && now !== document.body && !now.closest('#bar, #strip')) return;
  const title = $('#title');
  title.tabIndex = -1;
  (title.checkVisibility() ? title : $('.stage-view')).focus({ preventScroll: true });
}

export function createTitle({ store }) {
  const text = h('span', {
    contenteditable: 'plaintext-only',
    role: 'textbox',
    'aria-label': 'Scene title',
    spellcheck: 'false',
    title: 'Click to rename the scene',
    onblur: keep,
    onkeydown,
  });
  text.dataset.untitled = UNTITLED;
  $('#title').replaceChildren(text);

  function keep() {
    const longest = fieldOf(store.fields, 'title')?.max ?? 200;
    const title = text.textContent.replace(/\s+/g, ' ').trim().slice(0, longest);
    if (title !== store.read('title')) store.set('title', title);
    update();
  }
  function onkeydown(event) {
    if (event.key === 'Escape') setText(text, store.read('title') ?? '');
    if (event.key === 'Enter' || event.key === 'Escape') {
      event.preventDefault();
      text.blur();
    }
  }
  function update() {
    if (document.activeElement !== text) setText(text, store.read('title') ?? '');
    document.title = `${store.read('title') || UNTITLED} · Rimfall`;
    setText($('#direction'), stageDirection(store));
  }
  store.on('document', update);
  store.on('answer', update);
  store.on('view', update);
  store.on('document', ({ path }) => {
    if (path?.startsWith('habitat.')) $('#hint').hidden = true;
  });
  update();
}

/** One sentence in italics with the figures that follow from radius and spin. */
export function stageDirection({ answer, view, fields }) {
  if (!answer) return '';
  const { habitat, scene } = answer,
    show = (v, unit) => showQuantity(v, unit, view.units);
  const { thing: template, ground } = shapeFacts(fields, scene.habitat),
    thing = template.replace('{radius}', show(scene.habitat.radius_m, 'm'));
  if (!habitat.period_s) return `${thing} stands still${ground.level ? '' : ': no gravity anywhere in it'}.`;
  const later = scene.habitat.spin_ramp?.length ? ' at first' : '',
    gravity = `${threeFigures(habitat.deck_gravity_g)}\u00a0g`,
    speed = show(habitat.rim_speed_m_s, 'm/s');
  const gives = {
    platform: `the edge at ${speed}, which takes ${gravity} inward to stay on`,
    floor: `${gravity} on the floor, which moves at ${speed}`,
    deck: `${gravity} on the deck, the rim at ${speed}`,
  }[ground.name];
  return `${thing} turns at ${threeFigures(scene.habitat.spin_rpm)}\u00a0rpm${later}: ${gives}, one turn in ${threeFigures(habitat.period_s)}\u00a0s.`;
}
