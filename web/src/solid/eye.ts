/** The eye that looks at the solids: where it is, what it sees where, and what lies under a pointer. */
import { cross, dot, minus, plus, unit, type Piece, type Vec } from "./glb";

const OPENING = 0.62;
/** How far (rad) the eye sees from top to bottom. */
const STEEPEST = 1.53;
export const VIEWS: Record<string, [number, number]> = {
  "Corner": [2.45, 0.5], "Left": [-Math.PI / 2, 0], "Right": [Math.PI / 2, 0], "Front": [Math.PI, 0], "Rear": [0, 0], "Above": [-Math.PI / 2, STEEPEST],
};

/** What is cut away: what lies beyond `at` along an axis, on the side that is not kept. */
export type Cut = { axis: 0 | 1 | 2; at: number; keepsAbove: boolean };

export class Eye {
  target: Vec = [0, 0, 0];
  yaw = VIEWS.Corner![0];
  pitch = VIEWS.Corner![1];
  far = 8;

  /** The way from what is looked at to the eye. */
  get back(): Vec {
    return [Math.cos(this.yaw) * Math.cos(this.pitch), Math.sin(this.yaw) * Math.cos(this.pitch), Math.sin(this.pitch)];
  }
  get place(): Vec {
    return plus(this.target, this.back, this.far);
  }
  get right(): Vec {
    return unit(cross([0, 0, 1], this.back));
  }
  get up(): Vec {
    return cross(this.back, this.right);
  }

  turn(across: number, up: number): void {
    this.yaw -= across;
    this.pitch = Math.max(-STEEPEST, Math.min(STEEPEST, this.pitch + up));
  }
  nearer(by: number): void {
    this.far = Math.max(0.4, Math.min(80, this.far * by));
  }
  slide(across: number, up: number): void {
    this.target = plus(plus(this.target, this.right, -across * this.far), this.up, up * this.far);
  }

  /** Look at all of some places, from as near as lets all of them be seen. */
  fit(places: Vec[], aspect: number): void {
    const tan = Math.tan(OPENING / 2), [right, up, back] = [this.right, this.up, this.back];
    // The middle of what is seen, not of the space it takes; each round of aiming halves what is off.
    for (let round = 0; round < 4; round++) {
      const ends = [Infinity, -Infinity, Infinity, -Infinity];
      let far = 0.5;
      for (const one of places) {
        const at = minus(one, this.target), deep = dot(at, back), across = dot(at, right), over = dot(at, up);
        far = Math.max(far, Math.abs(over) / tan + deep, Math.abs(across) / (tan * Math.max(aspect, 0.1)) + deep);
      }
      this.far = far * 1.05;
      for (const one of places) {
        const at = minus(one, this.target), deep = this.far - dot(at, back);
        const across = dot(at, right) / deep, over = dot(at, up) / deep;
        [ends[0], ends[1]] = [Math.min(ends[0]!, across), Math.max(ends[1]!, across)];
        [ends[2], ends[3]] = [Math.min(ends[2]!, over), Math.max(ends[3]!, over)];
      }
      this.target = plus(plus(this.target, right, ((ends[0]! + ends[1]!) / 2) * this.far), up, ((ends[2]! + ends[3]!) / 2) * this.far);
    }
  }

  /** The matrix, column by column, that takes a place of the rig to the screen. */
  matrix(aspect: number): Float32Array {
    const [r, u, b, e] = [this.right, this.up, this.back, this.place];
    const f = 1 / Math.tan(OPENING / 2), near = Math.max(0.02, this.far / 60), far = this.far * 4 + 40;
    const depth = (far + near) / (near - far), shift = (2 * far * near) / (near - far);
    const rows = [
      [r[0] * f / aspect, r[1] * f / aspect, r[2] * f / aspect, -dot(r, e) * f / aspect],
      [u[0] * f, u[1] * f, u[2] * f, -dot(u, e) * f],
      [b[0] * depth, b[1] * depth, b[2] * depth, -dot(b, e) * depth + shift],
      [-b[0], -b[1], -b[2], dot(b, e)],
    ] as const;
    return new Float32Array([0, 1, 2, 3].flatMap((column) => rows.map((row) => row[column]!)));
  }

  /** Where a place is on the screen, in shares of its width and height from its top left. */
  seenAt(at: Vec, aspect: number): [number, number] {
    const from = minus(at, this.place), f = 1 / Math.tan(OPENING / 2), deep = -dot(from, this.back);
    return [(dot(from, this.right) * f) / aspect / deep / 2 + 0.5, 0.5 - (dot(from, this.up) * f) / deep / 2];
  }

  /** The way the eye looks through a point of the screen, given in shares from its top left. */
  through(x: number, y: number, aspect: number): Vec {
    const tan = Math.tan(OPENING / 2);
    return unit(plus(plus(minus([0, 0, 0], this.back), this.right, (2 * x - 1) * tan * aspect), this.up, (1 - 2 * y) * tan));
  }
}

/** How far along a line of sight a piece is met first; none where it is not. What is cut away is looked through. */
export function met(piece: Piece, from: Vec, way: Vec, cut: Cut | null): number {
  if (!crosses(piece.low, piece.high, from, way)) return Infinity;
  const { corners, faces } = piece;
  let nearest = Infinity;
  for (let face = 0; face < faces.length; face += 3) {
    const [i, j, k] = [3 * faces[face]!, 3 * faces[face + 1]!, 3 * faces[face + 2]!];
    const a: Vec = [corners[i]!, corners[i + 1]!, corners[i + 2]!];
    const one = minus([corners[j]!, corners[j + 1]!, corners[j + 2]!], a), other = minus([corners[k]!, corners[k + 1]!, corners[k + 2]!], a);
    const square = cross(way, other), size = dot(one, square);
    if (Math.abs(size) < 1e-12) continue;
    const off = minus(from, a), u = dot(off, square) / size;
    if (u < 0 || u > 1) continue;
    const turned = cross(off, one), v = dot(way, turned) / size;
    if (v < 0 || u + v > 1) continue;
    const far = dot(other, turned) / size;
    if (far > 0 && far < nearest && !isCutAway(plus(from, way, far), cut)) nearest = far;
  }
  return nearest;
}

export const isCutAway = (at: Vec, cut: Cut | null): boolean => cut !== null && at[cut.axis] > cut.at !== cut.keepsAbove;

function crosses(low: Vec, high: Vec, from: Vec, way: Vec): boolean {
  let start = 0, end = Infinity;
  for (let axis = 0; axis < 3; axis++) {
    const first = (low[axis]! - from[axis]!) / way[axis]!, last = (high[axis]! - from[axis]!) / way[axis]!;
    start = Math.max(start, Math.min(first, last));
    end = Math.min(end, Math.max(first, last));
  }
  return start <= end + 1e-9;
}
