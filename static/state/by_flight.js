// The throw that arrives for each flight time, as the server gives it: what of it is drawn, and what stands at a time. No elements.

const MANY = 3; // times the speeds that matter: faster throws than that are left off the drawing
const STEPS = [1, 2, 5, 10];

/** {from_s, to_s, most_m_s, least_deg} of the part that is drawn; null where there is too little of it. `speeds`: those that must be seen. */
export function drawnPart({ flight_s, speed_m_s, elevation_deg }, speeds) {
  const most = MANY * Math.max(Math.min(...speed_m_s), ...speeds);
  const slow = Array.from(flight_s, (_, i) => i).filter(i => speed_m_s[i] <= most);
  if (slow.length < 2) return null;
  const down = slow.some(i => elevation_deg[i] < 0);
  return { from_s: flight_s[slow[0]], to_s: flight_s[slow[slow.length - 1]], most_m_s: Math.min(most, Math.max(...speed_m_s)), least_deg: down ? -90 : 0 };
}

/** The throw that arrives after `time_s`, between the two that are known; null before the first and after the last. */
export function throwAfter({ flight_s, speed_m_s, heading_deg, elevation_deg }, time_s) {
  const last = flight_s.length - 1;
  if (!(time_s >= flight_s[0] && time_s <= flight_s[last])) return null;
  let i = 1;
  while (i < last && flight_s[i] < time_s) i += 1;
  const share = (time_s - flight_s[i - 1]) / (flight_s[i] - flight_s[i - 1]),
    between = of => of[i - 1] + share * (of[i] - of[i - 1]);
  return { flight_s: time_s, speed_m_s: between(speed_m_s), elevation_deg: between(elevation_deg), heading_deg: heading_deg[share < 0.5 ? i - 1 : i] };
}

/** Round figures from `low` to `high`, at most so many. */
export function roundFigures(low, high, most) {
  const least = (high - low) / Math.max(1, most),
    ten = 10 ** Math.floor(Math.log10(least)),
    step = (STEPS.find(one => one * ten >= least * (1 - 1e-9)) ?? 10) * ten,
    first = Math.ceil(low / step - 1e-9);
  return Array.from({ length: Math.max(0, Math.floor(high / step + 1e-9) - first + 1) }, (_, k) => Number(((first + k) * step).toPrecision(12)));
}
