// What is known of a path that was seen, in words: the habitat, the air, what flies and how it starts.

import { tr, trParts } from '../../state/language.js';
import { bodyName } from '../moves/body.js';
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
        [GIVEN.scene, tr('that of this scene, {figure}', { figure: scene(name) })],
        [GIVEN.given, tr('known:')],
        [GIVEN.none, tr('not known')],
      ],
      () => get().known[name],
      mode => put({ known: { ...get().known, [name]: mode }, given: { ...get().given, [name]: store.read(`habitat.${name}`) } }),
    );
  const radius = [knownList('radius_m', tr('Radius of the habitat')), of('given', 'radius_m')],
    spin = [knownList('spin_rpm', tr('Spin of the habitat')), of('given', 'spin_rpm')];
  const air = list(
    tr('The air'),
    () => [
      [GIVEN.scene, store.read('air') ? tr('the air of this scene') : tr('vacuum, as in this scene')],
      ...(store.read('air') ? [['vacuum', tr('vacuum')]] : [['room', tr('room air')]]),
      ...(get().given.air ? [[GIVEN.given, tr('the air of its file')]] : []),
      [GIVEN.none, tr('air that is not known')],
    ],
    airNow,
    chosen => within('known', { air: chosen }),
  );
  const body = list(
    tr('What flies'),
    () => [[null, tr('thing of unknown drag')], ...store.fields.bodies.map(({ name }) => [name, bodyName(name)])],
    () => get().known.body,
    chosen => within('known', { body: chosen }),
  );
  const start = list(
    tr('How it starts'),
    () => [
      ['thrown', tr('thrown')],
      ['dropped', tr('let go at rest')],
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
    ...trParts('The radius is {radius}, the spin is {spin}.', {
      radius: stated(radius, match.known.radius_m),
      spin: stated(spin, match.known.spin_rpm),
    }).flat(),
    ' ',
    ...(airless(match)
      ? trParts('It goes through {air}, and was {start}.', { air, start })
      : trParts('It goes through {air} as a {body}, and was {start}.', { air, body, start })),
  ];
  return { words, airless };
}
