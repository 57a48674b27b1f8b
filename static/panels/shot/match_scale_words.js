// How large things are in a picture, in words: by a line of known length over it, or by the camera that took it.

import { inSentence, tr, trParts } from '../../state/language.js';

const PLACE = ['along_m', 'height_m', 'axial_m'];

/** `figures`: of match_figures.js; get() → the match. Gives words(match) → the parts of a sentence. */
export function createScaleWords({ figures, get }) {
  const { of, list, put, within } = figures;
  const by = list(
    tr('How large things are is told by'),
    () => [
      ['plane', tr('a line over the picture')],
      ['camera', tr('the camera')],
    ],
    () => get().by,
    chosen => put({ by: chosen, own_camera: null }),
  );
  const distance = of('plane', 'distance_m');
  const up = list(
    tr('Up in the picture'),
    () => [
      [true, tr('straight up in the picture')],
      [false, tr('along the line')],
    ],
    () => get().plane.upright,
    upright => within('plane', { upright }),
  );
  const right = list(
    tr('To the right is'),
    () => [
      ['spinward', tr('spinward')],
      ['antispinward', tr('antispinward')],
    ],
    () => get().plane.right_is,
    right_is => within('plane', { right_is }),
  );
  const view = of('camera', 'field_of_view_deg'),
    bank = of('camera', 'roll_deg'),
    [along, height, axial] = placed('position', coordinate => tr('Camera, {coordinate}', { coordinate })),
    [aim_along, aim_up, aim_axial] = placed('look_at', coordinate => tr('Aim, {coordinate}', { coordinate }));

  function placed(part, labelled) {
    return PLACE.map(name => {
      const field = { ...figures.fields[name], label: labelled(inSentence(figures.fields[name].label)) };
      const write = (value, live) => within('camera', { [part]: { ...get().camera[part], [name]: value } }, live);
      return figures.figure(field, () => get().camera[part][name], write);
    });
  }

  const byLine = () => trParts('It is {distance} long and stands with its foot on the deck; up is {up}, to the right is {right}.', { distance, up, right });
  const byCamera = ({ own_camera }) =>
    own_camera
      ? [tr('It is the camera below.')]
      : trParts(
          'It sees {view} across from a place {along} along the deck, {height} up, {axial} along the axis, looks at {aim_along} along the deck, {aim_up} up, {aim_axial} along the axis, and banks {bank}. Turn these until the grid fits the floor.',
          { view, along, height, axial, aim_along, aim_up, aim_axial, bank },
        );

  return match => [...trParts('How large things are is told by {by}.', { by }), ' ', ...(match.by === 'plane' ? byLine() : byCamera(match))];
}
