// How large things are in a picture, in words: by a line of known length over it, or by the camera that took it.

const PLACE = ['along_m', 'height_m', 'axial_m'];
const AFTER = [' along the deck, ', ' up, ', ' along the axis'];

/** `figures`: of match_figures.js; get() → the match. Gives words(match) → the parts of a sentence. */
export function createScaleWords({ figures, get }) {
  const { of, list, put, within } = figures;
  const by = list(
    'How large things are is told by',
    () => [
      ['plane', 'a line over the picture'],
      ['camera', 'the camera'],
    ],
    () => get().by,
    chosen => put({ by: chosen, own_camera: null }),
  );
  const distance = of('plane', 'distance_m');
  const up = list(
    'Up in the picture',
    () => [
      [true, 'straight up in the picture'],
      [false, 'along the line'],
    ],
    () => get().plane.upright,
    upright => within('plane', { upright }),
  );
  const right = list(
    'To the right is',
    () => [
      ['spinward', 'spinward'],
      ['antispinward', 'antispinward'],
    ],
    () => get().plane.right_is,
    right_is => within('plane', { right_is }),
  );
  const view = of('camera', 'field_of_view_deg'),
    bank = of('camera', 'roll_deg'),
    from = placed('position', 'Camera'),
    at = placed('look_at', 'Aim');

  function placed(part, word) {
    return PLACE.flatMap((name, k) => {
      const field = { ...figures.fields[name], label: `${word}, ${figures.fields[name].label.toLowerCase()}` };
      const write = (value, live) => within('camera', { [part]: { ...get().camera[part], [name]: value } }, live);
      return [figures.figure(field, () => get().camera[part][name], write), AFTER[k]];
    });
  }

  const byLine = () => ['It is ', distance, ' long and stands with its foot on the deck; up is ', up, ', to the right is ', right, '.'];
  const byCamera = ({ own_camera }) =>
    own_camera
      ? ['It is the camera below.']
      : ['It sees ', view, ' across from a place ', ...from, ', looks at ', ...at, ', and banks ', bank, '. Turn these until the grid fits the floor.'];

  return match => ['How large things are is told by ', by, '. ', ...(match.by === 'plane' ? byLine() : byCamera(match))];
}
