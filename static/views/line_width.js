// How wide a path is drawn, px: as wide on a large stage as it must be to be read in a photograph of the screen.

const PHONE_PX = 500; // a narrower stage
const LINE_PX = { phone: 3.2, desk: 4.5, hall: 7 };
const HIGH_PX = 400; // a stage of a desk; on a higher one lines grow with it

export function lineWidth(width, height) {
  if (width < PHONE_PX) return LINE_PX.phone;
  return Math.min(LINE_PX.hall, LINE_PX.desk * Math.max(1, height / HIGH_PX));
}
