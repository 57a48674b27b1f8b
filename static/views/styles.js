// What all stages share: the colour of what is written and measured, and how wide a path is drawn.

export const BONE = '#EFEADC';
export const LINE_PX = { phone: 3.2, desk: 4.5 };

export function rgb(hex) {
  const c = parseInt(hex.slice(1), 16);
  return [(c >> 16) / 255, ((c >> 8) & 255) / 255, (c & 255) / 255];
}
