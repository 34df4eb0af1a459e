import { describe, expect, it } from "vitest";
import { around, LEAST_PX, MOST_NUMBERS, MOST_PX, numbered, sizes, type Word } from "./letters";

const word = (more: Partial<Word> = {}): Word => ({
  x: 0, y: 0, size: 100, chars: 6, lines: 1, isTurned: false, anchor: "middle", room: { width: 1000, height: 400 }, ...more,
});

describe("letters on a screen", () => {
  it("stay as they were placed where they are read", () => {
    expect(sizes([word(), word({ x: 5000, size: 80 })], 0.2)).toEqual([MOST_PX / 0.2, 80]);
  });

  it("never grow so large that they cover what is drawn", () => {
    expect(sizes([word(), word({ x: 9000, size: 20 })], 0.6)).toEqual([MOST_PX / 0.6, 20]);
  });

  it("are never shown smaller than they can be read", () => {
    const scale = 0.06;
    for (const size of sizes([word(), word({ x: 3000 }), word({ x: 9000, size: 40 })], scale)) expect(size === 0 || size * scale >= LEAST_PX - 1e-9).toBe(true);
  });

  it("are written larger in a thing with room and left out of one without", () => {
    const [wide, tight] = sizes([word(), word({ x: 5000, room: { width: 300, height: 100 } })], 0.06);
    expect(wide).toBeCloseTo(LEAST_PX / 0.06);
    expect(tight).toBe(0);
  });

  it("meant to be read from nearer are not written larger until then", () => {
    expect(sizes([word({ isNear: true })], 0.06)).toEqual([0]);
    expect(sizes([word({ isNear: true, size: 70 })], 0.2)).toEqual([70]);
  });

  it("never lie on each other once they are written larger", () => {
    const near = [word({ room: null }), word({ room: null, y: 130 }), word({ room: null, y: 400 })];
    expect(sizes(near, 0.16)).toEqual([100, 100, 100]);
    const [first, second, third] = sizes(near, 0.06);
    expect([first! > 0, second, third! > 0]).toEqual([true, 0, true]);
  });

  it("want room beyond the picture where they stand in the open, and none where they stand in a thing", () => {
    const whole = { left: 0, top: -1000, right: 5000, bottom: 0 };
    const beside = word({ room: null, x: 4900, y: -500, anchor: "start" });
    expect(around(whole, [beside], 0.06).right).toBeCloseTo(4900 + 6 * 0.46 * (LEAST_PX / 0.06));
    expect(around(whole, [word({ x: 4900, y: -500 })], 0.06)).toEqual(whole);
  });

  it("turn their room with them", () => {
    const upright = { isTurned: true, room: { width: 250, height: 1000 } };
    expect(sizes([word(upright), word({ ...upright, x: 3000, isTurned: false })], 0.06)).toEqual([LEAST_PX / 0.06, 0]);
  });
});

describe("numbers in place of names", () => {
  const scale = 0.06;
  const size = LEAST_PX / scale;
  const name = (more: Partial<Word> = {}): Word => word({ isName: true, room: { width: 250, height: 250 }, thing: more.room ?? { width: 250, height: 250 }, ...more });
  const marks = (words: Word[]) => numbered(words, sizes(words, scale), scale);

  it("stand for what has no room, in the order one reads them, and for nothing else", () => {
    const words = [name({ x: 3000 }), name({ x: 0 }), name({ x: 9000, room: { width: 4000, height: 900 } }), word({ x: 6000, room: { width: 100, height: 100 } }), name({ x: 1000, y: 4000 })];
    expect(marks(words).map((one) => [one.index, one.number])).toEqual([[1, 1], [0, 2], [4, 3]]);
  });

  it("stand in their thing, and where that is taken beside it with a line to it", () => {
    const free = marks([name()])[0];
    expect([free?.x, free?.y, free?.lead]).toEqual([0, 0, null]);
    const [moved] = marks([name(), word({ room: { width: 4000, height: 900 } })]);
    expect(moved?.lead).toEqual({ x: 0, y: 0 });
    expect(Math.abs(moved!.y) + Math.abs(moved!.x)).toBeGreaterThan(size);
  });

  it("never lie on each other nor on a word", () => {
    const crowd = Array.from({ length: 40 }, (_, at) => name({ x: (at % 8) * 130, y: Math.floor(at / 8) * 130 }));
    const found = marks([word({ room: null, y: 200 }), ...crowd]);
    expect(found.length).toBeGreaterThan(5);
    for (const one of found)
      for (const other of found)
        if (one !== other) expect(Math.abs(one.x - other.x) >= 0.46 * size || Math.abs(one.y - other.y) >= size).toBe(true);
    expect(found.every((one) => Math.abs(one.y - 200) > size * 0.9 || Math.abs(one.x) > 3 * 0.46 * size)).toBe(true);
    expect(found.map((one) => one.number)).toEqual(found.map((_, at) => at + 1));
  });

  it("are no more than can be looked at, the largest things first", () => {
    const many = Array.from({ length: 2 * MOST_NUMBERS }, (_, at) => name({ x: at * 2000, room: { width: 100 + (at % 2) * 100, height: 200 } }));
    const found = marks(many);
    expect(found).toHaveLength(MOST_NUMBERS);
    expect(found.every((one) => one.index % 2 === 1)).toBe(true);
  });

  it("stand for a name the program found no room for, however near one comes", () => {
    const keyed = [name({ isKeyed: true, size: 20, room: { width: 9000, height: 9000 } })];
    expect(sizes(keyed, 5)).toEqual([0]);
    expect(numbered(keyed, [0], 5)).toHaveLength(1);
  });
});

describe("names and numbers thin out as a picture grows smaller", () => {
  const of = (width: number, height: number): Partial<Word> => ({ isName: true, room: { width, height }, thing: { width, height } });
  const crowd = Array.from({ length: 200 }, (_, at) => word({
    ...of(260 + (at % 3) * 300, 200), chars: 9, size: 20, x: (at % 20) * 300, y: Math.floor(at / 20) * 260,
  }));
  const said = (scale: number) => {
    const found = sizes(crowd, scale);
    const named = crowd.flatMap((one, at) => (found[at] ? [{ x: one.x, y: one.y, half: (one.chars * 0.46 * found[at]!) / 2 }] : []));
    const marks = numbered(crowd, found, scale).map((one) => ({ x: one.x, y: one.y, half: (String(one.number).length * 0.46 * LEAST_PX) / scale / 2 }));
    return [...named, ...marks];
  };

  it("says less of a small one and more as one comes closer", () => {
    const [small, middle, large] = [said(0.04), said(0.08), said(0.16)];
    expect(small.length).toBeLessThan(middle.length);
    expect(middle.length).toBeLessThan(large.length);
    expect(small.length).toBeGreaterThan(10);
  });

  it("keeps room round each at every scale", () => {
    const tight = [0.03, 0.05, 0.08, 0.12, 0.2].flatMap((scale) => {
      const all = said(scale);
      return all.flatMap((one, at) => all.slice(at + 1).filter((other) => {
        const across = Math.abs(one.x - other.x) * scale - (one.half + other.half) * scale;
        return across < 5.9 && Math.abs(one.y - other.y) * scale - LEAST_PX < 0.9;
      }));
    });
    expect(tight).toEqual([]);
  });

  it("lets a measure stand close to a name, and not on it", () => {
    const name = word({ isName: true, room: null });
    const beside = (away: number) => sizes([name, word({ room: null, chars: 1, size: 20, y: away / 0.06 })], 0.06)[1];
    expect([beside(9), beside(LEAST_PX + 1)]).toEqual([0, LEAST_PX / 0.06]);
  });

  it("says nothing of what is drawn as a speck or a line until it is more", () => {
    const track = [word({ ...of(2000, 30), isKeyed: true })];
    const speck = [word({ ...of(90, 90), isKeyed: true })];
    expect([0.1, 0.2].map((scale) => numbered(track, [0], scale).length)).toEqual([0, 1]);
    expect([0.1, 0.2].map((scale) => numbered(speck, [0], scale).length)).toEqual([0, 1]);
  });

  it("leaves the smallest without where all have no room, also of those whose names stand in the open", () => {
    const heap = [1, 3, 2].map((side) => word({ ...of(side * 100, side * 100), room: null, isKeyed: true }));
    const first = numbered(Array.from({ length: 6 }, () => heap).flat(), Array<number>(18).fill(0), 0.2);
    expect(first.map((one) => one.index % 3)).toEqual([1]);
  });
});
