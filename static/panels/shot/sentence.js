// What is aimed at what, as two sentences whose figures are fields: who throws, where somebody is to catch it and how far they reach, and what of
// the throw is kept.

import { tr, trLater, trParts } from '../../state/language.js';
import { fieldOf } from '../../state/fields.js';
import { groundOf, floorName } from '../../state/shapes.js';
import { showQuantity } from '../../state/units.js';
import { elevationWords } from '../../state/words.js';
import { KEPT, SHARES, aimable, atShare, indexOf, keptAs, meetable, parseShare, placeOf, shareOf, shareWords, turnLength } from '../../state/shot.js';
import { h, setAttribute, setChildren } from '../shared/dom.js';
import { createList } from '../shared/choice.js';
import { createInline } from '../shared/inline.js';

const STANDING = '';
const FAR_M = 1000; // whose steps suit a hand
const KEPT_WORDS = {
  speed_m_s: trLater('its speed at'),
  elevation_deg: trLater('its elevation at'),
  flight_s: trLater('its flight at'),
  least: trLater('to the least speed that does it'),
};
const PLACE = 'motions.*.place.';
const SHARE = {
  label: trLater('How far round'),
  unit: '',
  min: 0,
  max: 1,
  shown: { min: 0, max: 1, scale: 'linear' },
  may_be: trLater('a share of a turn up to 1: 1/3, 33 % or 120°'),
};

export function createAimSentence({ store }) {
  const aim = () => store.shot.aim,
    units = () => store.view.units,
    put = (patch, live = false) => store.setShot({ aim: { ...aim(), ...patch } }, { live }),
    move = (patch, live = false) => put({ to: { ...aim().to, ...patch } }, live);
  const from = () => placeOf(store, indexOf(store, aim().motion));
  const away = () => aim().to.along_m - (store.document.habitat.floors ? 0 : from().along_m),
    side = () => (away() < 0 ? -1 : 1);
  const wrong = field => typed =>
    store.tell({ kind: 'told', field: null, say: tr('{label} was {typed}; it must be {may_be}.', { label: field.label, typed, may_be: field.may_be }) });
  const figure = (field, rest) => createInline({ field, units, wrong: wrong(field), ...rest });
  const list = (label, rest) => createList({ 'aria-label': label, class: 'pick' }, rest);
  const along = fieldOf(store.fields, `${PLACE}along_m`);

  const who = list(tr('Throw'), { options: () => aimable(store).map(({ name }) => [name, name]), chosen: () => aim().motion, choose: throwBy });
  const whom = list(tr('Catcher'), {
    options: () => [[STANDING, tr('somebody')], ...meetable(store, aim().motion).map(name => [name, name])],
    chosen: () => aim().to.motion ?? STANDING,
    choose: meet,
  });
  const far = figure(
    {
      ...along,
      label: tr('How far off'),
      min: 0,
      get max() {
        return (turnLength(store) ?? along.max) / 2;
      },
      shown: { min: 0, max: FAR_M, scale: 'fine_low' },
      may_be: tr('a distance up to half way round'),
    },
    {
      words: metres => showQuantity(metres, 'm', units()),
      read: () => Math.abs(away()),
      write: (metres, live) => move({ along_m: rounded(aim().to.along_m - away() + side() * metres) }, live),
    },
  );
  const way = list(tr('Which way'), {
    options: () => [
      [1, tr('spinward')],
      [-1, tr('antispinward')],
    ],
    chosen: side,
    choose: value => value !== side() && move({ along_m: rounded(aim().to.along_m - 2 * away()) }),
  });
  const share = figure(
    { ...SHARE, label: tr(SHARE.label), may_be: tr(SHARE.may_be) },
    {
      read: () => Math.abs(shareOf(store, aim()) ?? 0),
      write: (part, live) => store.setShot({ aim: atShare(store, aim(), side() * part) }, { live }),
      words: shareWords,
      parse: parseShare,
    },
  );
  const at = (key, label) =>
    figure({ ...fieldOf(store.fields, PLACE + key), label }, { read: () => aim().to[key] ?? 0, write: (value, live) => move({ [key]: value }, live) });
  const hands = at('height_m', tr('Height of the hands')),
    aside = at('axial_m', tr('Along the axis'));
  const floor = list(tr('Floor'), {
    options: () => (store.document.habitat.floors ?? []).map((one, k) => [k, floorName(one, k)]),
    chosen: () => aim().to.floor ?? 0,
    choose: value => move({ floor: value }),
  });
  const within = figure(fieldOf(store.fields, 'aim.within_m'), { read: () => aim().within_m, write: (within_m, live) => put({ within_m }, live) });
  const keep = list(tr('What is kept of the throw'), {
    options: () => KEPT.map(kept => [kept, tr(KEPT_WORDS[kept])]),
    chosen: () => kept(),
    choose: value => put({ fixed: keptAs(store, aim(), value) }),
  });
  const kept = () => Object.keys(aim().fixed)[0];
  const keptFigures = Object.fromEntries(
    ['speed_m_s', 'elevation_deg', 'flight_s'].map(key => {
      const field = fieldOf(store.fields, key === 'flight_s' ? 'aim.fixed.flight_s' : `motions.*.${key}`);
      const words = key === 'elevation_deg' ? elevationWords : null;
      return [key, figure(field, { read: () => aim().fixed[key] ?? 0, write: (value, live) => put({ fixed: { [key]: value } }, live), words })];
    }),
  );

  function throwBy(name) {
    const to = aim().to.motion === name ? { ...placeOf(store, indexOf(store, name)), along_m: from().along_m } : aim().to;
    put({ motion: name, to });
  }
  function meet(name) {
    if (name) return put({ to: { motion: name } });
    const { along_m, height_m, axial_m } = placeOf(store, indexOf(store, aim().to.motion));
    put({ to: { along_m, height_m, axial_m } });
  }

  const shareButtons = SHARES.map(([part, word]) =>
    h('button', { type: 'button', class: 'btn', onclick: () => store.setShot({ aim: atShare(store, aim(), side() * part) }) }, tr(word)),
  );
  const shares = h('p', { class: 'shares', role: 'group', 'aria-label': tr('How far round the catcher stands') }, shareButtons);
  const sentence = h('p', { class: 'words aim-sentence' });
  const element = h('div', {}, sentence, shares);
  const figures = [far, share, hands, aside, within, ...Object.values(keptFigures)],
    lists = [who, whom, way, floor, keep];
  let builtFor = null;

  // who is to catch what, in one sentence
  function asked({ moving, floors, across, level }) {
    const parts = { who: who.element, whom: whom.element, within: within.element };
    if (moving) return trParts('Aim {who} so that it meets {whom} within {within}.', parts);
    const caught = { ...parts, far: far.element, way: way.element, hands: hands.element, aside: aside.element, across: across[0] };
    if (floors?.length === 1)
      return trParts(
        'Aim {who} so that {whom} {far} {way} of the middle of the floor, catches it with hands {hands} up and {aside} {across}, within {within}.',
        caught,
      );
    if (floors)
      return trParts('Aim {who} so that {whom} {far} {way} of the middle of {floor}, catches it with hands {hands} up and {aside} {across}, within {within}.', {
        ...caught,
        floor: floor.element,
      });
    const round = { ...caught, share: share.element };
    return level
      ? trParts(
          'Aim {who} so that {whom} {far} {way} of the thrower, {share} of the way round, catches it with hands {hands} up, {aside} from the axis, within {within}.',
          round,
        )
      : trParts(
          'Aim {who} so that {whom} {far} {way} of the thrower, {share} of the way round, catches it with hands {hands} up and {aside} {across}, within {within}.',
          round,
        );
  }
  function keeping() {
    const kept_figure = keptFigures[kept()]?.element;
    return kept_figure ? trParts('Keep {keep} {figure}.', { keep: keep.element, figure: kept_figure }) : trParts('Keep {keep}.', { keep: keep.element });
  }

  // Made anew only when it says something else: a figure in hand keeps its focus.
  function build() {
    const { floors } = store.document.habitat,
      { across, level } = groundOf(store.fields, store.document.habitat),
      moving = Boolean(aim().to.motion);
    const next = [moving, floors?.length, level, kept()].join();
    if (next === builtFor) return;
    builtFor = next;
    setChildren(sentence, asked({ moving, floors, across, level }), ' ', keeping());
    setAttribute(shares, 'hidden', moving || Boolean(floors));
  }

  function update() {
    build();
    figures.forEach(one => one.update());
    lists.forEach(one => one.update());
    const now = Math.abs(shareOf(store, aim()) ?? 0);
    shareButtons.forEach((button, k) => setAttribute(button, 'aria-pressed', Math.abs(SHARES[k][0] - now) < 1e-6));
  }
  return { element, update };
}

const rounded = metres => Number(metres.toFixed(4));
