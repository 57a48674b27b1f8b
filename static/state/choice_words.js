// The words of a scene that a field may be one of, as the page says them.

import { tr, trAs, trLater } from './language.js';

const SAID = {
  // of what moves
  solid: trLater('solid'),
  hollow: trLater('hollow'),
  rolling: trLater('rolling'),
  sliding: trLater('sliding'),
  hub: trLater('hub'),
  rim: trLater('rim'),
  // of a craft
  turning: trLater('turning'),
  still: trLater('still'),
  counter: trLater('counter'),
  motor: trLater('motor'),
  thrusters: trLater('thrusters'),
  momentum: trLater('momentum'),
  spin: trLater('spin'),
  // solids
  point: trLater('point'),
  rod: trLater('rod'),
  ring: trLater('ring'),
  disc: trLater('disc'),
  cylinder: trLater('cylinder'),
  cylinder_shell: trLater('cylinder shell'),
  box: trLater('box'),
  sphere: trLater('sphere'),
  sphere_shell: trLater('sphere shell'),
  torus: trLater('torus'),
  torus_shell: trLater('torus shell'),
  cone: trLater('cone'),
  // materials
  'aluminium 6061-T6': trLater('aluminium 6061-T6'),
  'aluminium 7075-T6': trLater('aluminium 7075-T6'),
  'titanium Ti-6Al-4V': trLater('titanium Ti-6Al-4V'),
  'steel 4340': trLater('steel 4340'),
  'strong steel': trLater('strong steel'),
  'strong aluminium': trLater('strong aluminium'),
  'strong titanium': trLater('strong titanium'),
  'carbon fibre': trLater('carbon fibre'),
  aramid: trLater('aramid'),
};

/** A value of a field that is one of a few words; null: none of them.
 *  @param {string | null} value */
export function choiceWords(value) {
  if (value === null) return trAs('a value left out', 'none');
  return SAID[value] ? tr(SAID[value]) : String(value).replaceAll('_', ' ');
}
