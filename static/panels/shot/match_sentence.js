// How the pictures are to be read and what is known, as sentences whose figures are fields.

import { GIVEN, hasPicture } from '../../state/match.js';
import { proseFigure } from '../../state/units.js';
import { h, setAttribute, setChildren } from '../shared/dom.js';
import { createList } from '../shared/choice.js';
import { createInline } from '../shared/inline.js';

const figureField = (label, unit, min, max, scale = 'linear') => ({ label, unit, min, max, shown: { min, max, scale }, may_be: rangeWords(min, max, unit) });
const rangeWords = (min, max, unit) => `${min.toLocaleString('en')} to ${max.toLocaleString('en')}${unit ? `\u00a0${unit}` : ''}`;
const FIELDS = {
  frame_rate: figureField('Frames a second', '', 1, 240),
  accuracy_px: figureField('How well a mark is set', 'px', 0.1, 100, 'log'),
  accuracy_m: figureField('How well a row is known', 'm', 0.0001, 100, 'log'),
  distance_m: figureField('How long the line is', 'm', 0.01, 10_000, 'log'),
  field_of_view_deg: figureField('Field of view across', '°', 0.1, 175),
  roll_deg: figureField('Roll', '°', -360, 360),
  along_m: figureField('Along the deck', 'm', -10_000, 10_000, 'fine_low'),
  height_m: figureField('Height', 'm', -10_000, 10_000, 'fine_low'),
  axial_m: figureField('Along the axis', 'm', -10_000, 10_000, 'fine_low'),
  radius_m: figureField('Radius', 'm', 0.1, 100_000, 'log'),
  spin_rpm: figureField('Spin', 'rpm', 0, 600, 'fine_low'),
};
const SPEECH = { radius_m: 'm', spin_rpm: 'rpm' };
const PLACE = ['along_m', 'height_m', 'axial_m'];

/** get() → the match; edit(match, live). */
export function createMatchSentence({ store, get, edit }) {
  const units = () => store.view.units;
  const put = (patch, live = false) => edit({ ...get(), ...patch }, live);
  const within = (part, patch, live) => put({ [part]: { ...get()[part], ...patch } }, live);
  const wrong = field => typed => store.tell({ kind: 'told', field: null, say: `${field.label} was ${typed}; it must be ${field.may_be}.` });
  const parts = [];
  const keep = part => (parts.push(part), part);
  const inline = (field, read, write) => keep(createInline({ field, units, read, write, wrong: wrong(field) })).element;
  const own = name =>
    inline(
      FIELDS[name],
      () => get()[name],
      (value, live) => put({ [name]: value }, live),
    );
  const list = (label, options, chosen, choose) => keep(createList({ 'aria-label': label, class: 'pick' }, { options, chosen, choose })).element;
  const scene = name => proseFigure(store.read(`habitat.${name}`), SPEECH[name], units());

  const knownList = (name, label) =>
    list(
      label,
      () => [
        [GIVEN.scene, `that of this scene, ${scene(name)}`],
        [GIVEN.given, 'known:'],
        [GIVEN.none, 'not known'],
      ],
      () => get().known[name],
      mode => put({ known: { ...get().known, [name]: mode }, given: { ...get().given, [name]: store.read(`habitat.${name}`) } }),
    );
  const givenFigure = name =>
    inline(
      FIELDS[name],
      () => get().given[name],
      (value, live) => within('given', { [name]: value }, live),
    );
  const place = (part, name) =>
    inline(
      { ...FIELDS[name], label: `${part === 'position' ? 'Camera' : 'Aim'}, ${FIELDS[name].label.toLowerCase()}` },
      () => get().camera[part][name],
      (value, live) => within('camera', { [part]: { ...get().camera[part], [name]: value } }, live),
    );
  const ofCamera = name =>
    inline(
      FIELDS[name],
      () => get().camera[name],
      (value, live) => within('camera', { [name]: value }, live),
    );

  const figures = {
    rate: own('frame_rate'),
    px: own('accuracy_px'),
    metres: own('accuracy_m'),
    distance: inline(
      FIELDS.distance_m,
      () => get().plane.distance_m,
      (distance_m, live) => within('plane', { distance_m }, live),
    ),
    radius: givenFigure('radius_m'),
    spin: givenFigure('spin_rpm'),
    view: ofCamera('field_of_view_deg'),
    roll: ofCamera('roll_deg'),
  };
  const [from, at] = ['position', 'look_at'].map(part => PLACE.map(name => place(part, name)));
  const lists = {
    by: list(
      'How large things are is told by',
      () => [
        ['plane', 'a line over the picture'],
        ['camera', 'the camera'],
      ],
      () => get().by,
      by => put({ by, own_camera: null }),
    ),
    up: list(
      'Up in the picture',
      () => [
        [true, 'straight up in the picture'],
        [false, 'along the line'],
      ],
      () => get().plane.upright,
      upright => within('plane', { upright }),
    ),
    right: list(
      'To the right is',
      () => [
        ['spinward', 'spinward'],
        ['antispinward', 'antispinward'],
      ],
      () => get().plane.right_is,
      right_is => within('plane', { right_is }),
    ),
    slowed: list(
      'At what pace it is shown',
      () => [
        [false, 'runs as it was filmed'],
        [true, 'may be slowed or sped up'],
      ],
      () => get().slowed,
      slowed => put({ slowed }),
    ),
    radius: knownList('radius_m', 'Radius of the habitat'),
    spin: knownList('spin_rpm', 'Spin of the habitat'),
    air: list(
      'The air',
      () => [
        [GIVEN.scene, store.read('air') ? 'the air of this scene' : 'vacuum, as in this scene'],
        ...(store.read('air') ? [['vacuum', 'vacuum']] : [['room', 'room air']]),
        ...(get().given.air ? [[GIVEN.given, 'the air of its file']] : []),
        [GIVEN.none, 'air that is not known'],
      ],
      () => airNow(),
      air => within('known', { air }),
    ),
    body: list(
      'What flies',
      () => [[null, 'thing of unknown drag'], ...store.fields.bodies.map(({ name }) => [name, name])],
      () => get().known.body,
      body => within('known', { body }),
    ),
    start: list(
      'How it starts',
      () => [
        ['thrown', 'thrown'],
        ['dropped', 'let go at rest'],
      ],
      () => get().known.start,
      start => within('known', { start }),
    ),
  };
  // what was chosen while the scene had other air
  function airNow() {
    const { air } = get().known,
      named = store.read('air') ? 'room' : 'vacuum';
    return air === named ? GIVEN.scene : air;
  }

  const first = h('p', { class: 'words aim-sentence' }),
    second = h('p', { class: 'words aim-sentence' });
  const element = h('div', { class: 'match-sentence' }, first, second);
  let builtFor = null;

  // Made anew only when it says something else: a figure in hand keeps its focus.
  function build() {
    const match = get(),
      picture = hasPicture(match),
      { known, by, own_camera } = match;
    const next = [picture, by, match.slowed, known.radius_m, known.spin_rpm, airless(match), Boolean(own_camera), match.source?.count === null].join();
    if (next === builtFor) return;
    builtFor = next;
    const exposures = match.source?.count === null ? 'exposures' : 'frames';
    const line = ['It is ', figures.distance, ' long and stands with its foot on the deck; up is ', lists.up, ', to the right is ', lists.right, '.'];
    const camera = own_camera
      ? ['It is the camera below.']
      : [
          'It sees ',
          figures.view,
          ' across from a place ',
          ...listed(from, [' along the deck, ', ' up, ', ' along the axis']),
          ', looks at ',
          ...listed(at, [' along, ', ' up, ', ' along the axis']),
          ', and rolls ',
          figures.roll,
          '.',
        ];
    setChildren(
      first,
      ...(picture
        ? ['At ', figures.rate, ` ${exposures} a second it `, lists.slowed, '. A mark is good to ', figures.px, '. ']
        : ['A row is good to ', figures.metres, '. It ', lists.slowed, ...(match.slowed ? [', at ', figures.rate, ' frames a second'] : []), '. ']),
      ...(picture ? ['How large things are is told by ', lists.by, '. ', ...(by === 'plane' ? line : camera)] : []),
    );
    setChildren(
      second,
      'The radius is ',
      lists.radius,
      ...(known.radius_m === GIVEN.given ? [' ', figures.radius] : []),
      ', the spin is ',
      lists.spin,
      ...(known.spin_rpm === GIVEN.given ? [' ', figures.spin] : []),
      '. It goes through ',
      lists.air,
      ...(airless(match) ? [] : [' as a ', lists.body]),
      ', and was ',
      lists.start,
      '.',
    );
  }
  const airless = ({ known }) => known.air === 'vacuum' || (known.air === GIVEN.scene && !store.read('air'));
  const listed = (elements, words) => elements.flatMap((element, k) => [element, words[k]]);

  function update() {
    build();
    setAttribute(second, 'hidden', null);
    parts.forEach(part => part.element.isConnected && part.update());
  }
  return { element, update };
}
