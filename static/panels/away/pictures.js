// How pictures are taken, in a sentence: of which stage, how large, on what ground, with labels or none.

import { tr, trLater, trParts } from '../../state/language.js';
import { written } from '../../state/units.js';
import { h } from '../shared/dom.js';
import { createErrors, inlinePick, inlineType, tight } from './choices.js';

const FRAMES = [
  ['both', trLater('both stages')],
  ['aboard', trLater('Aboard')],
  ['outside', trLater('Outside')],
];
// biome-ignore format: a size a pair
const SIZES = [[1280, 720], [1920, 1080], [2560, 1440], [3840, 2160], [1080, 1080], [1080, 1920]];
const OWN = 'own';
const GROUNDS = [
  [false, trLater('dark background')],
  [true, trLater('transparent background')],
];
const WHAT = [
  ['all', trLater('everything')],
  ['paths', trLater('what moves and its paths')],
  ['things', trLater('what moves alone')],
];
const MATTES = [
  [false, trLater('without mattes')],
  [true, trLater('with a matte of each motion')],
];
const DEPTHS = [
  [false, trLater('without depth')],
  [true, trLater('with depth in metres (EXR)')],
];
const LABELS = [
  [true, trLater('with its labels')],
  [false, trLater('without labels')],
];
const FIRST = { frame: 'both', width: 1920, height: 1080, what: 'all', bare: false, labels: true, mattes: false, depth: false };
const LEAST_PX = 16;

/** chosen() → the choices kept; keep(choices); largest_px: of a side, on this machine; errorsChanged() when what is wrong changes. */
export function createPictures({ chosen, keep, largest_px, errorsChanged }) {
  let own = false,
    wrong = {};
  const now = () => ({ ...FIRST, ...chosen() });
  const put = patch => {
    wrong = {};
    keep({ ...chosen(), ...patch });
  };
  const pick = (name, label, options) =>
    inlinePick({
      label,
      options: () => options.map(([value, words]) => [value, tr(words)]),
      chosen: () => now()[name],
      choose: value => put({ [name]: value }),
    });
  const isListed = () => SIZES.some(([width, height]) => width === now().width && height === now().height);
  const size = inlinePick({
    label: tr('Size'),
    options: () => [
      ...SIZES.filter(side => Math.max(...side) <= largest_px).map(([width, height]) => [`${width} × ${height}`, `${width} × ${height}`]),
      [OWN, tr('of another size')],
    ],
    chosen: () => (own || !isListed() ? OWN : `${now().width} × ${now().height}`),
    choose(value) {
      own = value === OWN;
      const [width, height] = own ? [now().width, now().height] : value.split(' × ').map(Number);
      put({ width, height });
    },
  });
  const side = (name, label) =>
    inlineType({
      label,
      text: () => String(now()[name]),
      wide: 5,
      keep(typed) {
        const value = Number(typed);
        if (Number.isInteger(value) && value >= LEAST_PX && value <= largest_px) return put({ [name]: value });
        const places = { field: label, typed, least: LEAST_PX, most: written(largest_px, 0) };
        wrong = {
          [name]: typed
            ? tr('{field} was {typed}; it must be {least} to {most} px.', places)
            : tr('{field} was empty; it must be {least} to {most} px.', places),
        };
        slot.say(wrong);
        errorsChanged();
      },
    });
  const controls = {
    frame: pick('frame', tr('Stage'), FRAMES),
    size,
    width: side('width', tr('Width')),
    height: side('height', tr('Height')),
    what: pick('what', tr('What is drawn'), WHAT),
    bare: pick('bare', tr('Background'), GROUNDS),
    labels: pick('labels', tr('Labels'), LABELS),
    mattes: pick('mattes', tr('Mattes'), MATTES),
    depth: pick('depth', tr('Depth'), DEPTHS),
  };
  const at = name => controls[name].element;
  const slot = createErrors(controls);
  const sides = h('span', {}, trParts('{width} px wide and {height} px high, ', { width: at('width'), height: at('height') }));
  const labelled = h('span', {}, tight(at('labels'), ','), ' ');
  const element = h(
    'div',
    { class: 'how' },
    h(
      'p',
      { class: 'lead' },
      tr('Of '),
      ...[tight(at('frame'), ','), ' ', tight(at('size'), ','), ' ', sides, tight(at('what'), ','), ' ', tight(at('bare'), ','), ' ', labelled],
      tight(at('mattes'), ','),
      ' ',
      tight(at('depth'), '.'),
    ),
    h(
      'p',
      { class: 'small' },
      tr(
        'From the seats the stages are seen from now, of what they show. A clip always has the dark background. Mattes and depth go with every frame: a matte is a picture of one motion alone, whose opacity is where it is; depth is straight ahead from the eye, 10 billion where there is nothing. A plot as PNG is as wide as a picture.',
      ),
    ),
    slot.element,
  );
  function update() {
    slot.say(wrong);
    for (const control of Object.values(controls)) control.update();
    labelled.hidden = now().what !== 'all';
    sides.hidden = size.element.value !== OWN;
  }
  return {
    element,
    update,
    now,
    hasErrors: () => Object.keys(wrong).length > 0,
  };
}
