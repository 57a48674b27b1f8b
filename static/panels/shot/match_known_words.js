// What is known of a path that was seen, in words: the habitat, the air, what flies and how it starts.

import { GIVEN } from '../../state/match.js';
import { proseFigure } from '../../state/units.js';

const SPEECH = { radius_m: 'm', spin_rpm: 'rpm' };

/** `figures`: of match_figures.js; get() → the match. Gives {words(match) → the parts of a sentence, airless(match)}. */
export function createKnownWords({ store, figures, get }) {
  const { list, of, put, within } = figures;
  const scene = name => proseFigure(store.read(`habitat.${name}`), SPEECH[name], store.view.units);
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
  const radius = [knownList('radius_m', 'Radius of the habitat'), of('given', 'radius_m')],
    spin = [knownList('spin_rpm', 'Spin of the habitat'), of('given', 'spin_rpm')];
  const air = list(
    'The air',
    () => [
      [GIVEN.scene, store.read('air') ? 'the air of this scene' : 'vacuum, as in this scene'],
      ...(store.read('air') ? [['vacuum', 'vacuum']] : [['room', 'room air']]),
      ...(get().given.air ? [[GIVEN.given, 'the air of its file']] : []),
      [GIVEN.none, 'air that is not known'],
    ],
    airNow,
    chosen => within('known', { air: chosen }),
  );
  const body = list(
    'What flies',
    () => [[null, 'thing of unknown drag'], ...store.fields.bodies.map(({ name }) => [name, name])],
    () => get().known.body,
    chosen => within('known', { body: chosen }),
  );
  const start = list(
    'How it starts',
    () => [
      ['thrown', 'thrown'],
      ['dropped', 'let go at rest'],
    ],
    () => get().known.start,
    chosen => within('known', { start: chosen }),
  );

  // what was chosen while the scene had other air
  function airNow() {
    const { air: chosen } = get().known,
      named = store.read('air') ? 'room' : 'vacuum';
    return chosen === named ? GIVEN.scene : chosen;
  }

  const airless = ({ known }) => known.air === 'vacuum' || (known.air === GIVEN.scene && !store.read('air'));
  const stated = ([chosen, figure], mode) => [chosen, ...(mode === GIVEN.given ? [' ', figure] : [])];
  const words = match => [
    'The radius is ',
    ...stated(radius, match.known.radius_m),
    ', the spin is ',
    ...stated(spin, match.known.spin_rpm),
    '. It goes through ',
    air,
    ...(airless(match) ? [] : [' as a ', body]),
    ', and was ',
    start,
    '.',
  ];
  return { words, airless };
}
