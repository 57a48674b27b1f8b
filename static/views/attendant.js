// Who pours: they stand behind the jug, face where it pours, and hold it. Nobody reaches what is too high or too low, and nobody holds a tap.

const RAD = Math.PI / 180;
const BEHIND_M = 0.5;
const ASIDE_M = 0.22; // of the shoulder, from the middle of a body
const SHOULDER_M = 1.42;
const GRIP_M = [-0.17, 0]; // from the lip: the handle goes round it as the jug tilts
const REACH_M = 0.75;
const LEAST_RADIUS_M = 6; // in a smaller habitat a step to the side leans too much

/** Whether it is a tap that it drips from: what tilts is a jug. */
export const dripsFromTap = ({ stream, input }) => stream.regime === 'drips' && !input.tilt?.length;

/** {along_m, axial_m} from the lip to who holds it, heading_rad they face, and `hand` [forward, up] m from their feet; null where nobody does. */
export function holderOf(m, ground) {
  const { stream, input, release } = m;
  if (!stream || !input || dripsFromTap(m) || ground.level || ground.radius_m < LEAST_RADIUS_M) return null;
  const hand = [BEHIND_M + GRIP_M[0], release.height_m + GRIP_M[1]];
  if (Math.hypot(hand[0], hand[1] - SHOULDER_M) > REACH_M) return null;
  const heading_rad = (input.heading_deg ?? 0) * RAD;
  const [s, c] = [Math.sin(heading_rad), Math.cos(heading_rad)];
  return { along_m: ASIDE_M * s - BEHIND_M * c, axial_m: -BEHIND_M * s - ASIDE_M * c, heading_rad, hand };
}
