// Who pours: they stand behind the jug, face where it pours, and hold it. Who throws or drops something faces it, and has it in their hand; what
// goes along the spin passes across before them, and what goes the other way along the axis is thrown from the other side, or it would go through them.
// Nobody reaches what is too high or too low, and nobody holds a tap.

const RAD = Math.PI / 180;
const BEHIND_M = 0.5;
const ASIDE_M = 0.22; // of the shoulder, from the middle of a body
const SHOULDER_M = 1.42;
const GRIP_M = [-0.17, 0]; // from the lip: the handle goes round it as the jug tilts
const REACH_M = 0.75;
const LEAST_RADIUS_M = 6; // in a smaller habitat a step to the side leans too much

/** Whether it is a tap that it drips from: what tilts is a jug. */
export const dripsFromTap = ({ stream, input }) => stream.regime === 'drips' && !input.tilt?.length;

/** {along_m, axial_m} from the lip, or from what is let go, to who holds it, heading_rad they face, and `hand` [forward, up, aside] m from
 *  their feet, aside toward that hand's own side; null where nobody does. */
export function holderOf(m, ground) {
  const { stream, input, release } = m;
  if (!input || ground.level) return null;
  if (!stream) return throwerOf(m);
  if (dripsFromTap(m) || ground.radius_m < LEAST_RADIUS_M) return null;
  const hand = [BEHIND_M + GRIP_M[0], release.height_m + GRIP_M[1], ASIDE_M];
  if (!reaches(hand)) return null;
  const heading_rad = (input.heading_deg ?? 0) * RAD;
  const [s, c] = [Math.sin(heading_rad), Math.cos(heading_rad)];
  return { along_m: ASIDE_M * s - BEHIND_M * c, axial_m: -BEHIND_M * s - ASIDE_M * c, heading_rad, hand };
}

// As far off as the kind says, along the axis.
function throwerOf({ stage, input, release }) {
  const hand = [stage.attended_m, release.height_m, 0];
  if (!reaches(hand)) return null;
  const side = input.speed_m_s && Math.sin((input.heading_deg ?? 0) * RAD) < -0.5 ? -1 : 1;
  return { along_m: 0, axial_m: -side * stage.attended_m, heading_rad: (side * Math.PI) / 2, hand };
}

const reaches = ([forward, up, aside]) => Math.hypot(forward, up - SHOULDER_M, aside - ASIDE_M) < REACH_M;
