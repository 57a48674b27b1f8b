// The rows of a motion's card: their order, and what each is called where its own label is long or another kind's.

// the order of the rows; what a kind does not have is left out
export const MAIN = [
  'dock',
  'flow_ml_s',
  'lip_diameter_mm',
  'length_m',
  'first_angle_deg',
  'first_heading_deg',
  'speed_m_s',
  'elevation_deg',
  'heading_deg',
  'climb_deg',
  'start',
  'place.height_m',
  'to_height_m',
  'top_speed_m_s',
  'acceleration_m_s2',
  'from_m',
  'for_s',
  'duration_s',
];
export const OF_A_PERSON = ['mass_kg', 'drag_area_m2', 'centre_m', 'size_m'];
export const CHOICES = { start: 'Starts', dock: 'Dock' };
const ON_A_TABLE = { 'place.axial_m': 'Outward', 'place.along_m': 'Round' };
const SHORT = {
  elevation_deg: 'Up',
  'place.height_m': 'From height',
  'place.along_m': 'Along',
  'place.axial_m': 'Across',
  to_height_m: 'To height',
  top_speed_m_s: 'Top speed',
  acceleration_m_s2: 'Gains',
  climb_deg: 'Slope',
  first_angle_deg: 'Aside',
  first_heading_deg: 'Toward',
  from_m: 'From',
  for_s: 'For',
  length_m: 'Line',
  mass_kg: 'Mass',
  drag_area_m2: 'Drag area',
  centre_m: 'Centre',
  size_m: 'Size',
};
const OF_A_KIND = {
  stand: { 'place.height_m': 'Height' },
  hang: { 'place.height_m': 'Pivot', heading_deg: 'Pushed' },
  jump: { 'place.height_m': 'Feet at' },
  walk: { 'place.height_m': 'Feet at' },
  lift: { 'place.height_m': 'From height' },
  let_go: { 'place.height_m': 'Hangs at' },
  approach: { 'place.height_m': 'Dock at', speed_m_s: 'Speed' },
};

/** {field: word} of a kind: its short words, else what the kind itself calls a field otherwise than others do. */
export function rowLabels({ own = {} }, kind, level = false) {
  const told = Object.entries(own).map(([name, { label }]) => [name, label]);
  const owned = Object.fromEntries(told.filter(([, label]) => label));
  return { ...SHORT, ...owned, ...OF_A_KIND[kind], ...(level && ON_A_TABLE) };
}
