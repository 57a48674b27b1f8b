// Small words the page sets itself: headings, counts, camera presets.

const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];
const PRESETS = { a: 'over the shoulder', b: 'beside', c: 'at the hub', d: 'down the axis', e: 'with it', w: 'whole wheel' };

const ALONG_THE_AXIS = ['along the axis', 'back along the axis'];

/** 0 spinward, 180 antispinward, 90 and 270 the two ways `across` the ground; between them the nearest and how far off. */
export function headingWords(degrees, [over, back] = ALONG_THE_AXIS) {
  const turned = ((degrees % 360) + 360) % 360;
  const names = ['spinward', over, 'antispinward', back];
  const quarter = Math.round(turned / 90) % 4;
  const off = Math.abs(turned - (turned > 315 ? 360 : quarter * 90));
  if (off < 0.05) return names[quarter];
  return `${Number(off.toFixed(1))}° off ${names[quarter]}`;
}

export function elevationWords(degrees) {
  if (Math.abs(degrees) < 0.05) return 'level';
  const size = `${Number(Math.abs(degrees).toFixed(1))}°`;
  return degrees > 0 ? `${size} up` : `${size} down`;
}

/** 'once', 'twice', 'twelve times'. */
export function timesWords(number) {
  return ['never', 'once', 'twice'][number] ?? `${COUNTS[number] ?? number} times`;
}

export function countWords(number, one, many = one.endsWith('s') ? one : `${one}s`) {
  return `${COUNTS[number] ?? number} ${number === 1 ? one : many}`;
}

/** 'two throws', 'three motions', 'nothing yet'. */
export function motionsWords(motions, kinds) {
  if (!motions.length) return 'nothing yet';
  const same = motions.every(motion => motion.kind === motions[0].kind);
  if (!same) return countWords(motions.length, 'motion');
  const { one, many } = kinds[motions[0].kind];
  return countWords(motions.length, one, many);
}

export function presetWords(letter) {
  return PRESETS[letter] ?? letter;
}

export function paceWords(pace) {
  return { 1: 'full speed', 0.5: '½ speed', 0.25: '¼ speed', 0.1: '1/10 speed' }[pace] ?? `${pace} of full speed`;
}

/** A name nobody has yet: 'Throw', 'Throw 2', … */
export function freshName(wanted, taken) {
  const base = wanted.replace(/ \d+$/, '').slice(0, 56);
  for (let n = 1; ; n += 1) {
    const name = n === 1 ? base : `${base} ${n}`;
    if (!taken.includes(name)) return name;
  }
}
