// The arrows at a moving body, as switches, cards and stages name them, each in a colour of its own: apart from every path's for all
// eyes (CIEDE2000 8 or more under simulated protan, deutan and tritan), 3:1 on the lit deck and 4.5:1 on a label's plate.

import { trLater } from './language.js';

export const ARROW_KINDS = [
  { show: 'velocity', word: trLater('velocity'), color: '#FFFFFF', of: 'rotating_velocity_m_s' },
  { show: 'centrifugal', word: trLater('centrifugal'), color: '#F47BD0', of: 'centrifugal_m_s2' },
  { show: 'coriolis', word: trLater('Coriolis'), color: '#ADFFCE', of: 'coriolis_m_s2' },
];
