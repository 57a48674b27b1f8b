// How a motion ends, in few words and figures: for the lanes, the plot and the tables.

const WHY = {
  met_ceiling: 'meets the ceiling',
  met_hub: 'meets the hub',
  met_hull: 'meets the hull',
  met_wall: 'meets a wall',
  left_edge: 'leaves the edge',
  never_meets: 'never lands',
  duration: 'still flies',
};
const ENDS = {
  rest: 'rests',
  edge: 'leaves the edge',
  landed: 'lies there',
  arrived: 'arrives',
  slack: 'its line goes slack',
  'met a surface': 'meets a wall',
  'time limit': 'still moves',
  duration: 'still moves',
};

const TIMED = new Set(['rest', 'edge', 'arrived', 'slack']);

/** 'lands 1.07, rests 4.20'; what starts on the ground: 'rests 4.20'; `stays`: its kind's word where nothing happens to it, or null. */
export function endWords(motion, stays) {
  const { landing, no_landing: why, end } = motion;
  const last = motion.events.at(-1);
  const later = TIMED.has(end) ? `${ENDS[end]} ${last.time_s.toFixed(2)}` : ENDS[end];
  if (landing) return landing.time_s < last.time_s && end !== 'landed' ? `lands ${landing.time_s.toFixed(2)}, ${later}` : `lands ${landing.time_s.toFixed(2)}`;
  if (end === 'arrived') return later;
  if (stays && !motion.events.some(event => event.kind === 'slip')) return end === 'slack' ? later : stays;
  if (why === 'starts_there') return later;
  return WHY[why] ?? later ?? end;
}

/** Where it first lands, or where it was last seen: {say, along_m, drift_m, time_s}; null before the answer has any of it. */
export function lastSeen(motion) {
  const [release] = motion.events;
  if (motion.landing) return { say: 'lands', ...motion.landing };
  const last = motion.events.at(-1);
  if (!release) return null;
  const count = motion.along_m.length,
    running = motion.end === 'duration' && count > 0;
  const along_m = running ? motion.along_m[count - 1] : last.along_m;
  return {
    say: WHY[motion.no_landing] ?? ENDS[motion.end] ?? motion.end,
    along_m,
    drift_m: along_m - release.along_m,
    time_s: running ? null : last.time_s,
  };
}
