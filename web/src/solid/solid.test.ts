import { describe, expect, it } from "vitest";
import { Eye, VIEWS, isCutAway, met } from "./eye";
import { NotAScene, edgesOf, read, standsAt, type Piece, type Vec } from "./glb";

const CORNERS = [0, 0, 0, 2, 0, 0, 2, 1, 0, 0, 1, 0, 0, 0, 3, 2, 0, 3, 2, 1, 3, 0, 1, 3];
const FACES = [0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7, 0, 1, 5, 0, 5, 4, 1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3, 0, 4, 3, 4, 7];

/** A file as the program writes it: one box of a part that goes in at stage 2 and leaves at 4. */
function file(): ArrayBuffer {
  const tree = {
    asset: { version: "2.0" }, scene: 0,
    scenes: [{ nodes: [3], extras: { rev: 7, number: 3, is_ticked: true, stages: ["shell", "foam", "beds"], missing: ["lost"] } }],
    nodes: [
      { name: "bed", mesh: 0, extras: { stuff: "thing", stage: 2, until: 4, stands: "perhaps", piece: 5 } },
      { name: "parts[bed]", children: [0], extras: { of: "parts[bed]", stage: 2, litres: 6000, line: 12, says: "weighs 12 lb" } },
      { name: "stage 2 beds", children: [1], extras: { stage: 2 } },
      { name: "rig", children: [2], rotation: [-Math.SQRT1_2, 0, 0, Math.SQRT1_2] },
    ],
    meshes: [{ primitives: [{ attributes: { POSITION: 0 }, indices: 1, material: 0 }] }],
    materials: [{ pbrMetallicRoughness: { baseColorFactor: [0.5, 0.0, 1.0, 1] } }],
    accessors: [
      { bufferView: 0, componentType: 5126, count: 8, type: "VEC3", min: [0, 0, 0], max: [2, 1, 3] },
      { bufferView: 1, componentType: 5125, count: 36, type: "SCALAR" },
    ],
    bufferViews: [{ buffer: 0, byteOffset: 0, byteLength: 96 }, { buffer: 0, byteOffset: 96, byteLength: 144 }],
  };
  let text = JSON.stringify(tree);
  text += " ".repeat((4 - (text.length % 4)) % 4);
  const bytes = new ArrayBuffer(20 + text.length + 8 + 240), words = new DataView(bytes);
  [0x46546c67, 2, bytes.byteLength, text.length, 0x4e4f534a].forEach((one, place) => words.setUint32(4 * place, one, true));
  new Uint8Array(bytes, 20, text.length).set(new TextEncoder().encode(text));
  new Float32Array(bytes, 28 + text.length, 24).set(CORNERS);
  new Uint32Array(bytes, 28 + text.length + 96, 36).set(FACES);
  return bytes;
}
const box = (): Piece => read(file()).pieces[0]!;

describe("a file of solids", () => {
  it("gives each piece with its path, its stages and its closed mesh", () => {
    const scene = read(file());
    expect([scene.rev, scene.number, scene.isTicked, scene.missing]).toEqual([7, 3, true, ["lost"]]);
    expect(scene.paths).toEqual([{ of: "parts[bed]", stage: 2, until: 4, stands: "perhaps", line: 12, says: "weighs 12 lb", litres: 6000 }]);
    const [piece] = scene.pieces;
    expect([piece!.name, piece!.path, piece!.number, piece!.high]).toEqual(["bed", scene.paths[0], 5, [2, 1, 3]]);
    expect([piece!.corners.length, piece!.faces.length]).toEqual([24, 36]);
    expect(piece!.colour[0]).toBeCloseTo(0.7354, 3); // half the light is three quarters of what one sees
  });
  it("refuses what is none", () => {
    expect(() => read(new ArrayBuffer(8))).toThrow(NotAScene);
    expect(() => read(new ArrayBuffer(64))).toThrow(NotAScene);
  });
  it("stands from its stage to its last, and today as it is ticked", () => {
    const piece = box();
    expect([1, 2, 4, 5].map((stage) => standsAt(piece, stage))).toEqual([false, true, true, false]);
    expect([standsAt(piece, null), standsAt({ ...piece, stands: "no" }, null)]).toEqual([true, false]);
  });
  it("has an edge where faces meet at an angle, none across a flat one", () => {
    expect(edgesOf(new Float32Array(CORNERS), new Uint32Array(FACES)).length).toBe(12 * 2 * 3);
  });
});

describe("the eye", () => {
  const looking = (view: string): Eye => {
    const eye = new Eye();
    [eye.yaw, eye.pitch] = VIEWS[view]!;
    eye.target = [1, 0.5, 1.5];
    eye.fit([[0, 0, 0], [2, 1, 3], [2, 0, 0], [0, 1, 3]], 1.5);
    return eye;
  };
  it("sees the rear to its right from the left side, and the right side up from above", () => {
    expect(looking("Left").right[0]).toBeCloseTo(1);
    expect(looking("Right").right[0]).toBeCloseTo(-1);
    expect(looking("Front").right[1]).toBeCloseTo(-1); // facing the front, its left is to one's right
    expect([looking("Above").right[0], looking("Above").up[1]]).toEqual([expect.closeTo(1), expect.closeTo(1, 1)]);
  });
  it("fits all of it into the picture", () => {
    for (const view of Object.keys(VIEWS)) {
      const eye = looking(view), places: Vec[] = [[0, 0, 0], [2, 1, 3], [2, 0, 0], [0, 1, 3]];
      for (const one of places) for (const share of eye.seenAt(one, 1.5)) expect(share).toBeGreaterThan(-0.01), expect(share).toBeLessThan(1.01);
    }
  });
  it("puts a place where its matrix puts it", () => {
    const eye = looking("Corner"), m = eye.matrix(1.5), at: Vec = [0.4, 0.8, 2.1];
    const row = (place: number) => m[place]! * at[0] + m[4 + place]! * at[1] + m[8 + place]! * at[2] + m[12 + place]!;
    const [x, y] = eye.seenAt(at, 1.5);
    expect([row(0) / row(3) / 2 + 0.5, 0.5 - row(1) / row(3) / 2]).toEqual([expect.closeTo(x, 4), expect.closeTo(y, 4)]);
  });
  it("looks through a point of the picture at what is seen there", () => {
    const eye = looking("Corner"), [x, y] = eye.seenAt([1, 0.5, 1.5], 1.5);
    expect(met(box(), eye.place, eye.through(x, y, 1.5), null)).toBeLessThan(eye.far + 1);
    expect(met(box(), eye.place, eye.through(0.001, 0.999, 1.5), null)).toBe(Infinity);
  });
  it("looks past what a section cut away", () => {
    const from: Vec = [1, 0.5, 10], down: Vec = [0, 0, -1];
    expect(met(box(), from, down, null)).toBeCloseTo(7);
    expect(met(box(), from, down, { axis: 2, at: 1, keepsAbove: false })).toBeCloseTo(10); // on to the underside
    expect([isCutAway([0, 0, 2], { axis: 2, at: 1, keepsAbove: false }), isCutAway([0, 0, 2], { axis: 2, at: 1, keepsAbove: true })]).toEqual([true, false]);
  });
});
