// What is said of each kind of motion's inputs. A name in braces is a field of the motion; what is said follows from what it has.

import { axisWords } from '../../state/spin_axis.js';

const RUNS_M_S = 2.5;
const STRAIGHT_UP_DEG = 89.95;

/** kind → (motion with its defaults, and the word for its ground) → template. */
export const SENTENCES = {
  drop: motion => `Dropped from {place.height_m} above the ${motion.ground}${spins(motion)}.${bounces(motion)}`,
  throw: motion => `Thrown at {speed_m_s}, {elevation_deg}, {heading_deg}${spins(motion)}.${bounces(motion)}`,
  pour: poured,
  roll: motion => `${start(motion)}${motion.ramp ? ' on a ramp of {ramp.slope_deg} that rises {ramp.heading_deg}' : ''}${turns(motion)}.`,
  stand: motion => `Stands on a table, its middle {place.height_m} above the ${motion.ground}.`,
  hang: hung,
  jump: jumps,
  walk: walks,
  lift: ({ acceleration_m_s2: gains }) =>
    `Rides a lift from {place.height_m} to {to_height_m} at ${gains ? 'up to ' : ''}{top_speed_m_s}${gains ? ', gaining speed at {acceleration_m_s2}' : ''}.`,
  let_go: ({ speed_m_s: speed }) =>
    `Hangs {place.height_m} the rim and lets go${speed ? ', pushing off at {speed_m_s}, {elevation_deg}, {heading_deg}' : ''}.`,
  approach: ({ dock }) => `Coasts in to the ${dock ?? 'hub'} at {speed_m_s} from {from_m} away; it comes from {elevation_deg}, {heading_deg}.`,
};

function poured({ target, tilt }) {
  const lip = tilt?.length ? 'a tilting lip' : 'a lip';
  return `Poured at {flow_ml_s} from ${lip} of {lip_diameter_mm}, {elevation_deg}, {heading_deg}, for {duration_s}${target ? ', toward a cup {target.diameter_m} wide' : ''}.`;
}

function hung({ first_angle_deg: aside, speed_m_s: speed }) {
  const from = aside ? ', let go {first_angle_deg} aside, {first_heading_deg}' : '';
  return `Hangs on a line of {length_m}${from}${speed ? ', pushed at {speed_m_s}, {heading_deg}' : aside ? '' : ', at rest'}.`;
}

function jumps({ elevation_deg: up, carried }) {
  const way = up >= STRAIGHT_UP_DEG ? 'straight up' : '{elevation_deg}, {heading_deg}';
  const run = carried?.speed_m_s ? ', on the run at {carried.speed_m_s}, {carried.heading_deg}' : '';
  return `Jumps at {speed_m_s}, ${way}${run}.`;
}

function walks({ speed_m_s: speed, climb_deg: climbs }) {
  const does = climbs ? 'Climbs' : speed > RUNS_M_S ? 'Runs' : 'Walks';
  return `${does} at {speed_m_s}, {heading_deg},${climbs ? ' up a slope of {climb_deg},' : ''} for {for_s}.`;
}

const start = ({ start: how, speed_m_s: speed }) =>
  how === 'sliding' ? 'Set sliding at {speed_m_s}, {heading_deg},' : speed ? 'Rolled at {speed_m_s}, {heading_deg},' : 'Let roll from rest';
const turns = ({ ball_spin_rpm: spin }) => (spin ? ' spinning at {ball_spin_rpm} about the upright' : '');
const spins = ({ ball_spin_rpm: spin, ball_spin_axis: axis, heading_deg: heading }) =>
  spin ? `, spinning at {ball_spin_rpm} ${axisWords(axis, heading ?? 0)}` : '';
const bounces = ({ bounces: count }) => (count ? ' It may rebound {bounces}.' : '');
