/** Paints the solids: calm flat colours, every edge drawn, what is cut filled. Own WebGL, since the job is small. */
import type { Cut, Eye } from "./eye";
import { edgesOf, plus, type Piece, type Vec } from "./glb";

const PLACED = `#version 300 es
in vec3 place; uniform mat4 eye; uniform vec3 moved; out vec3 at;
void main() { at = place; gl_Position = eye * vec4(place + moved, 1.0); }`;
const FACE = `#version 300 es
precision highp float;
in vec3 at; uniform vec3 colour, inside; uniform vec4 cut; uniform float lit; out vec4 shown;
void main() {
  if (dot(cut.xyz, at) > cut.w) discard;
  vec3 n = normalize(cross(dFdx(at), dFdy(at)));
  if (!gl_FrontFacing) { shown = vec4(inside, 1.0); return; }
  float light = 0.80 + 0.13 * n.z + 0.09 * dot(n, vec3(-0.45, -0.85, 0.25));
  shown = vec4(mix(colour, colour * light, lit), 1.0);
}`;
const LINE = `#version 300 es
precision highp float;
in vec3 at; uniform vec3 colour; uniform vec4 cut; out vec4 shown;
void main() { if (dot(cut.xyz, at) > cut.w) discard; shown = vec4(colour, 1.0); }`;
const NOWHERE = [0, 0, 0, 1] as const;

/** The colours of a theme: paper, ink of edges, what is held, and how dark the stuffs are. */
export type Ink = { paper: Vec; edge: Vec; ink: Vec; chalk: Vec; dark: boolean };
export type Shown = { piece: Piece; moved: Vec; isPerhaps: boolean; isHeld: boolean; isHovered: boolean };
export type CutFace = { piece: number; corners: number[]; outline: number[] };

type Array = { array: WebGLVertexArrayObject; held: WebGLBuffer[] };
type Buffers = { faces: Array; count: number; lines: Array; ends: number };

export class Painter {
  private readonly gl: WebGL2RenderingContext;
  private readonly face: Program;
  private readonly line: Program;
  private readonly kept = new Map<Piece, Buffers>();
  private cuts = new Map<number, Buffers>();

  constructor(canvas: HTMLCanvasElement) {
    const gl = canvas.getContext("webgl2", { antialias: true, alpha: false });
    if (!gl) throw new Error("no WebGL");
    this.gl = gl;
    this.face = new Program(gl, PLACED, FACE);
    this.line = new Program(gl, PLACED, LINE);
    gl.enable(gl.DEPTH_TEST);
    gl.enable(gl.POLYGON_OFFSET_FILL);
  }

  forget(): void {
    for (const one of [...this.kept.values(), ...this.cuts.values()]) this.drop(one);
    this.kept.clear();
    this.cuts.clear();
  }

  /** Take the cut faces of a section; each stands a hair before the others, so that two that meet do not flicker. */
  cutFaces(faces: CutFace[], cut: Cut | null): void {
    for (const one of this.cuts.values()) this.drop(one);
    this.cuts = new Map(faces.map((one, rank) => {
      const out = cut ? (cut.keepsAbove ? -1 : 1) * (2 + rank) * 2e-5 : 0;
      const lifted = (numbers: number[], more: number) => Float32Array.from(numbers, (value, index) => (cut && index % 3 === cut.axis ? value + out * more : value));
      const corners = lifted(one.corners, 1);
      return [one.piece, this.put(corners, Uint32Array.from({ length: corners.length / 3 }, (_, index) => index), lifted(one.outline, 1.4))];
    }));
  }

  paint(shown: Shown[], eye: Eye, cut: Cut | null, ink: Ink): void {
    const { gl } = this, { width, height } = gl.canvas;
    gl.viewport(0, 0, width, height);
    gl.clearColor(...ink.paper, 1);
    gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
    const matrix = eye.matrix(width / height);
    const plane = cut ? [0, 0, 0, (cut.keepsAbove ? -1 : 1) * cut.at] : [...NOWHERE];
    if (cut) plane[cut.axis] = cut.keepsAbove ? -1 : 1;
    gl.polygonOffset(1.2, 2);
    this.face.use(matrix, plane);
    gl.uniform1f(this.face.spot("lit"), 1);
    for (const one of shown) {
      const colour = colourOf(one, ink);
      this.face.set("colour", colour);
      this.face.set("inside", cut ? mixed(colour, ink.ink, 0.22) : mixed(colour, ink.ink, 0.12));
      this.face.set("moved", one.moved);
      this.draw(this.buffers(one.piece), false);
    }
    this.line.use(matrix, plane);
    for (const one of shown) {
      this.line.set("colour", one.isHeld ? ink.chalk : one.isPerhaps ? mixed(ink.edge, ink.paper, 0.35) : ink.edge);
      this.line.set("moved", one.moved);
      this.draw(this.buffers(one.piece), true);
    }
    if (cut) this.paintCut(shown, matrix, ink);
  }

  private paintCut(shown: Shown[], matrix: Float32Array, ink: Ink): void {
    this.face.use(matrix, [...NOWHERE]);
    this.gl.uniform1f(this.face.spot("lit"), 0);
    const mine = shown.flatMap((one) => {
      const found = this.cuts.get(one.piece.number);
      return found ? [[one, found] as const] : [];
    });
    for (const [one, found] of mine) {
      const filled = mixed(colourOf(one, ink), ink.ink, 0.22);
      this.face.set("colour", filled);
      this.face.set("inside", filled);
      this.face.set("moved", one.moved);
      this.draw(found, false);
    }
    this.line.use(matrix, [...NOWHERE]);
    for (const [one, found] of mine) {
      this.line.set("colour", one.isHeld ? ink.chalk : ink.ink);
      this.line.set("moved", one.moved);
      this.draw(found, true);
    }
  }

  private buffers(piece: Piece): Buffers {
    const found = this.kept.get(piece) ?? this.put(piece.corners, piece.faces, edgesOf(piece.corners, piece.faces));
    this.kept.set(piece, found);
    return found;
  }

  private put(corners: Float32Array, faces: Uint32Array, lines: Float32Array): Buffers {
    return { faces: this.array(corners, faces), count: faces.length, lines: this.array(lines, null), ends: lines.length / 3 };
  }

  private array(corners: Float32Array, faces: Uint32Array | null): Array {
    const { gl } = this, array = gl.createVertexArray(), held = [gl.createBuffer()];
    gl.bindVertexArray(array);
    gl.bindBuffer(gl.ARRAY_BUFFER, held[0]!);
    gl.bufferData(gl.ARRAY_BUFFER, corners, gl.STATIC_DRAW);
    gl.enableVertexAttribArray(0);
    gl.vertexAttribPointer(0, 3, gl.FLOAT, false, 0, 0);
    if (faces) {
      held.push(gl.createBuffer());
      gl.bindBuffer(gl.ELEMENT_ARRAY_BUFFER, held[1]!);
      gl.bufferData(gl.ELEMENT_ARRAY_BUFFER, faces, gl.STATIC_DRAW);
    }
    gl.bindVertexArray(null);
    return { array, held };
  }

  private draw(one: Buffers, asLines: boolean): void {
    const { gl } = this;
    gl.bindVertexArray((asLines ? one.lines : one.faces).array);
    if (asLines) gl.drawArrays(gl.LINES, 0, one.ends);
    else gl.drawElements(gl.TRIANGLES, one.count, gl.UNSIGNED_INT, 0);
  }

  private drop(one: Buffers): void {
    for (const { array, held } of [one.faces, one.lines]) {
      this.gl.deleteVertexArray(array);
      for (const buffer of held) this.gl.deleteBuffer(buffer);
    }
  }
}

class Program {
  private readonly program: WebGLProgram;
  private readonly spots = new Map<string, WebGLUniformLocation | null>();

  constructor(private readonly gl: WebGL2RenderingContext, vertex: string, fragment: string) {
    this.program = gl.createProgram();
    for (const [kind, text] of [[gl.VERTEX_SHADER, vertex], [gl.FRAGMENT_SHADER, fragment]] as const) {
      const shader = gl.createShader(kind);
      if (!shader) throw new Error("no shader");
      gl.shaderSource(shader, text);
      gl.compileShader(shader);
      gl.attachShader(this.program, shader);
    }
    gl.bindAttribLocation(this.program, 0, "place");
    gl.linkProgram(this.program);
    if (!gl.getProgramParameter(this.program, gl.LINK_STATUS)) throw new Error(gl.getProgramInfoLog(this.program) ?? "not linked");
  }

  use(matrix: Float32Array, cut: readonly number[]): void {
    this.gl.useProgram(this.program);
    this.gl.uniformMatrix4fv(this.spot("eye"), false, matrix);
    this.gl.uniform4f(this.spot("cut"), cut[0]!, cut[1]!, cut[2]!, cut[3]!);
  }

  set(name: string, value: Vec): void {
    this.gl.uniform3f(this.spot(name), ...value);
  }

  spot(name: string): WebGLUniformLocation | null {
    if (!this.spots.has(name)) this.spots.set(name, this.gl.getUniformLocation(this.program, name));
    return this.spots.get(name) ?? null;
  }
}

const mixed = (one: Vec, other: Vec, share: number): Vec => plus([one[0] * (1 - share), one[1] * (1 - share), one[2] * (1 - share)], other, share);

/** The colour of a piece in a theme: darker in the dark, paler where it stands perhaps, chalk where it is held. */
export function colourOf(one: Shown, ink: Ink): Vec {
  const own = ink.dark ? mixed(one.piece.colour, ink.paper, 0.5) : one.piece.colour;
  const there = one.isPerhaps ? mixed(own, ink.paper, 0.55) : own;
  return one.isHeld ? mixed(there, ink.chalk, 0.5) : one.isHovered ? mixed(there, ink.chalk, 0.22) : there;
}
