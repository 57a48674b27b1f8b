// A small scene and the part of GET /api/fields the tests of the page's state need.

const number = (rest = {}) => ({
  label: '',
  unit: '',
  kind: 'number',
  min: -1e6,
  max: 1e6,
  default: 0,
  required: false,
  may_be: 'a number',
  ...rest,
});

export const FIELDS = {
  fields: {
    rimfall: { default: null, required: true },
    title: { label: 'Title', kind: 'text', default: '', required: false },
    habitat: { default: null, required: true },
    'habitat.shape': { kind: 'choice', default: 'cylinder', required: false },
    'habitat.radius_m': number({ label: 'Radius', unit: 'm', min: 0.1, max: 100000, default: null, required: true }),
    'habitat.spin_rpm': number({ label: 'Spin', unit: 'rpm', min: 0, max: 200, default: null, required: true }),
    'habitat.width_m': number({ unit: 'm', default: null, nullable: true }),
    'habitat.decks': { kind: 'list', default: [], required: false },
    air: { kind: 'part', default: { pressure_kpa: 101.325, temperature_c: 20 }, required: false, nullable: true },
    'air.pressure_kpa': number({ default: 101.325 }),
    'air.temperature_c': number({ default: 20 }),
    motions: { kind: 'list', default: null, required: true },
    'motions.*.start_s': number(),
    'motions.*.place': { kind: 'part', default: { along_m: 0, height_m: 0, axial_m: 0 }, required: false },
    'motions.*.place.along_m': number(),
    'motions.*.place.height_m': number(),
    'motions.*.place.axial_m': number(),
    'motions.*.speed_m_s': number(),
    'motions.*.heading_deg': number(),
    'motions.*.elevation_deg': number(),
    'motions.*.body': { kind: 'body', default: null, required: true },
    'motions.*.body.drag': { kind: 'drag', default: 'sphere', required: false },
  },
};

export const SCENE = {
  rimfall: 1,
  title: 'Two throws',
  habitat: { shape: 'cylinder', radius_m: 56, spin_rpm: 3, width_m: null },
  motions: [
    { kind: 'throw', name: 'out', start_s: 0, place: { along_m: 0, height_m: 1.5, axial_m: 0 }, speed_m_s: 6, body: 'handball' },
    {
      kind: 'throw',
      name: 'back',
      place: { height_m: 1.5 },
      speed_m_s: 6,
      heading_deg: 180,
      body: { mass_kg: 1, diameter_m: 0.1, drag: 'sphere' },
    },
  ],
};
