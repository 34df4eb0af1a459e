/** What of a GLB file the program writes is needed to show it: closed meshes, each with its rig path and its stages. */

export type Vec = [number, number, number];

/** A rig path: what is picked, named and listed as one. */
export type Path = { of: string; stage: number; until: number | null; stands: string; line: number | null; says: string; litres: number };
export type Piece = {
  name: string; path: Path; stuff: string; colour: Vec; stage: number; until: number | null; stands: "yes" | "perhaps" | "no";
  outward: Vec | null; number: number; corners: Float32Array; faces: Uint32Array; low: Vec; high: Vec;
};
export type Scene = { rev: number; number: number; isTicked: boolean; stages: string[]; missing: string[]; paths: Path[]; pieces: Piece[] };

type Json = Record<string, any>;

export class NotAScene extends Error {}

/** Read a file into pieces. Whatever is not as the program writes it is refused. */
export function read(bytes: ArrayBuffer): Scene {
  const words = new DataView(bytes);
  if (bytes.byteLength < 20 || words.getUint32(0, true) !== 0x46546c67 || words.getUint32(16, true) !== 0x4e4f534a) throw new NotAScene("no GLB file");
  const length = words.getUint32(12, true);
  const tree = JSON.parse(new TextDecoder().decode(new Uint8Array(bytes, 20, length))) as Json;
  const start = 20 + length + 8;
  const head = (tree.scenes?.[0]?.extras ?? {}) as Json;
  const paths: Path[] = [];
  const pieces: Piece[] = [];
  const numbers = (index: number) => {
    const one = tree.accessors[index] as Json;
    const view = tree.bufferViews[one.bufferView] as Json;
    return { one, at: start + (view.byteOffset ?? 0), length: one.count * (one.type === "VEC3" ? 3 : 1) };
  };
  const walk = (node: Json, path: Path | null): void => {
    const more = (node.extras ?? {}) as Json;
    const own: Path | null = typeof more.of === "string"
      ? { of: more.of, stage: more.stage, until: null, stands: "no", line: more.line ?? null, says: more.says ?? "", litres: more.litres ?? 0 }
      : path;
    if (own !== path && own) paths.push(own);
    if (typeof node.mesh === "number" && own) {
      const shape = tree.meshes[node.mesh].primitives[0] as Json;
      const place = numbers(shape.attributes.POSITION), order = numbers(shape.indices);
      const colour = (tree.materials[shape.material].pbrMetallicRoughness.baseColorFactor as number[]).slice(0, 3).map(seen) as Vec;
      own.until = more.until ?? null;
      if (own.stands !== "yes") own.stands = more.stands;
      pieces.push({
        name: node.name, path: own, stuff: more.stuff, colour, stage: more.stage, until: more.until ?? null, stands: more.stands,
        outward: more.outward ?? null, number: more.piece,
        corners: new Float32Array(bytes, place.at, place.length), faces: new Uint32Array(bytes, order.at, order.length),
        low: place.one.min, high: place.one.max,
      });
    }
    for (const child of (node.children ?? []) as number[]) walk(tree.nodes[child], own);
  };
  for (const root of (tree.scenes?.[0]?.nodes ?? []) as number[]) walk(tree.nodes[root], null);
  return { rev: head.rev ?? 0, number: head.number ?? 0, isTicked: head.is_ticked ?? false, stages: head.stages ?? [], missing: head.missing ?? [], paths, pieces };
}

/** The colour of a light as one sees it. */
const seen = (light: number): number => (light <= 0.0031308 ? light * 12.92 : 1.055 * light ** (1 / 2.4) - 0.055);

/** Whether a piece stands at a stage of the plan, or, at no stage, today as ticked. */
export function standsAt(piece: { stage: number; until: number | null; stands: string }, stage: number | null): boolean {
  if (stage === null) return piece.stands !== "no";
  return piece.stage <= stage && (piece.until === null || stage <= piece.until);
}

/** The edges where two faces of a closed mesh meet at more than a slight angle, as pairs of places. */
export function edgesOf(corners: Float32Array, faces: Uint32Array): Float32Array {
  const normals: Vec[] = [];
  const open = new Map<number, number>();
  const found: number[] = [];
  const count = corners.length / 3;
  const at = (index: number): Vec => [corners[3 * index]!, corners[3 * index + 1]!, corners[3 * index + 2]!];
  for (let face = 0; face < faces.length / 3; face++) {
    const ends = [faces[3 * face]!, faces[3 * face + 1]!, faces[3 * face + 2]!] as const;
    const [a, b, c] = [at(ends[0]), at(ends[1]), at(ends[2])];
    normals.push(unit(cross(minus(b, a), minus(c, a))));
    for (let side = 0; side < 3; side++) {
      const from = ends[side]!, to = ends[(side + 1) % 3]!;
      const twin = open.get(to * count + from);
      if (twin === undefined) open.set(from * count + to, face);
      else if (dot(normals[twin]!, normals[face]!) < 0.94) found.push(...at(from), ...at(to));
    }
  }
  return new Float32Array(found);
}

export const minus = (a: Vec, b: Vec): Vec => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const plus = (a: Vec, b: Vec, by = 1): Vec => [a[0] + b[0] * by, a[1] + b[1] * by, a[2] + b[2] * by];
export const dot = (a: Vec, b: Vec): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vec, b: Vec): Vec => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
export const unit = (a: Vec): Vec => {
  const length = Math.hypot(...a) || 1;
  return [a[0] / length, a[1] / length, a[2] / length];
};
