import { ChangeSet, Text } from "@codemirror/state";
import { expect, test } from "vitest";
import type { TextChange } from "./contract";
import { asOne, Typing, wholeAsChange } from "./typing";

const put = (text: string, changes: TextChange[]) => asOne(changes, text.length).apply(Text.of(text.split("\n"))).toString();
const at = (start: number, insert: string, end = start): TextChange => ({ start, end, insert });

/** A program that carries what is late past what came before it, and a page that types at the same time. */
class Both {
  typing = new Typing();
  constructor(public here: string, public there: string = here) {}
  type(change: TextChange): void {
    this.typing.typed(asOne([change], this.here.length));
    this.here = put(this.here, [change]);
  }
  hear(changes: TextChange[]): void {
    const set = this.typing.from(asOne(changes, this.typing.lengthThere(this.here.length)));
    this.here = set.apply(Text.of(this.here.split("\n"))).toString();
  }
}

test("a change made elsewhere lands right beside what is still on its way", () => {
  const both = new Both("one two three");
  both.type(at(0, "x "));
  expect(both.typing.next()).toEqual([at(0, "x ")]);
  both.type(at(2, "y "));
  both.hear([at(8, "THREE", 13)]);
  expect(both.here).toBe("x y one two THREE");
  both.typing.answered();
  expect(both.typing.next()).toEqual([at(2, "y ")]);
});

test("what waits is carried past a change before it", () => {
  const both = new Both("one two");
  both.type(at(7, "!"));
  both.typing.next();
  both.type(at(8, "?"));
  both.hear([at(0, "zero ")]);
  expect(both.here).toBe("zero one two!?");
  both.typing.answered();
  expect(both.typing.next()).toEqual([at(13, "?")]);
});

test("what is typed while something is under way goes as one", () => {
  const both = new Both("");
  both.type(at(0, "a"));
  expect(both.typing.next()).toEqual([at(0, "a")]);
  both.type(at(1, "b"));
  both.type(at(2, "c"));
  expect(both.typing.next()).toBeNull();
  both.typing.answered();
  expect(both.typing.next()).toEqual([at(1, "bc")]);
  both.typing.answered();
  expect(both.typing.isDone).toBe(true);
});

test("changes made one after the other are one change", () => {
  expect(asOne([at(0, "ab"), at(1, "", 2)], 0).apply(Text.empty).toString()).toBe("a");
  expect(asOne([], 3)).toBeInstanceOf(ChangeSet);
});

test.each([["abc", "abxc"], ["aaa", "aa"], ["", "a"], ["a", ""], ["one two", "one three two"]])("%j becomes %j in one stretch", (before, after) => {
  expect(wholeAsChange(before, after).apply(Text.of([before])).toString()).toBe(after);
});

test("what is neither answered nor sent is told apart, in places that fit one another", () => {
  const both = new Both("one two");
  both.type(at(3, " and"));
  both.typing.next();
  both.type(at(7, " then"));
  expect(both.typing.rest()).toEqual({ under: [at(3, " and")], waits: [at(7, " then")] });
  expect(both.typing.answered()?.apply(Text.of(["one two"])).toString()).toBe("one and two");
  expect(both.typing.rest()).toEqual({ under: [], waits: [at(7, " then")] });
});

test("of two things typed at one place the one the program had first stands first, as it does there", () => {
  const both = new Both("one two");
  both.type(at(3, "X"));
  both.typing.next();
  both.type(at(4, "Z"));
  both.hear([at(3, "Y")]);
  expect(both.here).toBe("oneYXZ two");
  both.typing.answered();
  expect(both.typing.next()).toEqual([at(5, "Z")]);
});

test.each<[string, TextChange[], TextChange, boolean]>([
  ["in its line", [at(5, "7")], at(3, "55", 5), true],
  ["at the other end of its line", [at(5, "7")], at(0, "b", 1), true],
  ["at the very end of its line", [at(0, "7")], at(5, " more"), true],
  ["at the very beginning of its line", [at(10, "7")], at(6, "x"), true],
  ["in the line below", [at(5, "7")], at(6, "x", 7), false],
  ["in the line above", [at(7, "7")], at(3, "55", 5), false],
  ["in a line that was typed above it", [at(0, "new\n")], at(6, "x", 7), false],
  ["in the line of what came second", [at(0, "7"), at(9, "8")], at(6, "x", 7), true],
])("a change made elsewhere %s meets what was typed: as it says", (_where, typed, elsewhere, meets) => {
  const text = "a: 10\nb: 1\nc: 2\n";
  const both = new Both(text);
  typed.forEach((one, index) => {
    both.type(one);
    if (!index) both.typing.next();
  });
  expect(both.typing.meets(asOne([elsewhere], text.length), Text.of(text.split("\n")))).toBe(meets);
});
