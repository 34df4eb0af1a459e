/** The scales a sheet is printed at, and the room it has (mm) on a landscape page, A4 or Letter, within its margins. */
const SCALES = [1, 2, 5, 10, 15, 20, 25, 30, 35, 40, 50, 100];
const ROOM = { wide: 255, high: 120 };
/** Pixels of a browser in a millimetre of paper. */
export const PX_IN_MM = 96 / 25.4;

/** The largest scale, as 1 to so many, at which a stretch of the rig (mm) fits a page. */
export function scaleFor(wide: number, high: number): number {
  return SCALES.find((one) => wide / one <= ROOM.wide && high / one <= ROOM.high) ?? Math.ceil(Math.max(wide / ROOM.wide, high / ROOM.high) / 100) * 100;
}
