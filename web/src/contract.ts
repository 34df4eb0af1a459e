// Written by tools/contract.py from src/boxwright/web/contract.py. Change that file, never this one.


export const CONTRACT = 3;

export type Accept = {
  seq: number;
  base: number;
  t: "accept";
  code: string;
  where: string;
  note: string;
};

export type Add = {
  seq: number;
  base: number;
  t: "add";
  section: string;
  name: string;
  entries?: Record<string, string>;
};

export type Answer = {
  use: string;
  label: string;
  word: "go" | "limits" | "ask" | "no";
  says: string[];
  act: string;
  questions: string[];
  explains: string;
};

export type Apply = {
  seq: number;
  base: number;
  t: "apply";
  code: string;
  where: string;
  load: string;
  use: string;
};

export type Ask = {
  name: string;
  label: string;
  explains: string;
};

export type Balance = {
  front_mm: number;
  rear_mm: number;
  coupler_mm: number;
  reactions: Reaction[];
  says: string;
};

export type Begin = {
  seq: number;
  base: number;
  t: "begin";
  demo?: string;
  answers?: Record<string, string>;
};

export type Blank = {
  path: string;
  label: string;
  text: string;
  unit: string;
  explains: string;
  example: string;
  line: number | null;
  wrong: string;
};

export type BringBack = {
  seq: number;
  base: number;
  t: "bring-back";
  name: string;
};

export type Cancel = {
  seq: number;
  base: number;
  t: "cancel";
};

export type Chart = {
  name: string;
  title: string;
  form: "through" | "fall";
  unit: string;
  labels: string[];
  series: Series[];
  limits: Limit[];
  of: string[];
  says: string;
  low: number;
  high: number;
  step: number;
  share: number;
};

export type Choice = {
  name: string;
  label: string;
};

export type Copy = {
  seq: number;
  base: number;
  t: "copy";
  of: string;
  name?: string;
};

export type Difference = {
  name: string;
  lines: DifferentLine[];
};

export type DifferentLine = {
  side: "then" | "now" | "both" | "gap";
  line: number;
  text: string;
  before: string;
  after: string;
};

export type Disk = {
  t: "disk";
  state: "step" | "dirty" | "stuck" | "broken" | "conflict" | "gone" | "read-only";
  says: string;
  hash: string;
  text: string | null;
};

export type Drop = {
  seq: number;
  base: number;
  t: "drop";
  of: string;
  x_mm?: number;
  y_mm?: number;
  z_mm?: number;
};

export type EarlierText = {
  name: string;
  until: string;
  says: string;
  size: string;
};

export type EnterReading = {
  seq: number;
  base: number;
  t: "enter-reading";
  kind: string;
  values: Record<string, string>;
};

export type Figure = {
  key: string;
  label: string;
  text: string;
  unit: string;
  band: string;
  kind: "stop" | "limit" | "fix" | "unknown" | "advice" | null;
  path: string;
  explains: string;
};

export type Form = {
  name: string;
  label: string;
  explains: string;
  fields: FormField[];
};

export type FormField = {
  name: string;
  label: string;
  explains: string;
  text: string;
  options: Choice[];
  is_needed: boolean;
};

export type Hello = {
  seq: number;
  base: number;
  t: "hello";
  page?: string;
  contract: number;
  screen: string;
  slot: Slot;
  locale?: string;
};

export type KeepWriting = {
  seq: number;
  base: number;
  t: "write-again";
};

export type Labelled = {
  label: string;
  text: string;
};

export type Leaving = {
  page: string;
  edits: (Hello | Look | Move | Cancel | Drop | Set | Add | Copy | TakeOut | Rename | Turn | Seek | Apply | Accept | TextEdit | Rejoin | BringBack | EnterReading | WriteMeasures | Undo | Redo | Resolve | KeepWriting | Recover | Begin)[];
  typed: Typed | null;
};

export type LeftText = {
  text: string;
  is_sure: boolean;
  rev: number;
};

export type Limit = {
  label: string;
  y: number;
  kind: "stop" | "limit" | "fix" | "unknown" | "advice";
};

export type Look = {
  seq: number;
  base: number;
  t: "look";
  screen: string;
  slot: Slot;
};

export type Move = {
  seq: number;
  base: number;
  t: "move";
  of: string;
  x_mm?: number;
  y_mm?: number;
  z_mm?: number;
};

export type NightIs = {
  t: "night";
  seq: number;
  rev: number;
  slot: Slot;
  figures: Figure[];
};

export type No = {
  t: "no";
  seq: number;
  why: string;
  asked: string;
};

export type Numbers = {
  t: "numbers";
  seq: number;
  rev: number;
  preview: boolean;
  slot: Slot;
  of: string;
  answers: Answer[];
  figures: Figure[];
  balance: Balance | null;
  findings: ShownFinding[] | null;
  accepted: ShownFinding[] | null;
  problems: ShownProblem[] | null;
  held: Figure[];
  night: Figure[] | null;
  stale: string[];
};

export type Offered = {
  t: "offered";
  seq: number;
  rev: number;
  key: string;
  remedy: string;
  says: string;
  is_of_the_built: boolean;
};

export type Page = {
  name: string;
  title: string;
  svg: string;
};

export type Patch = {
  t: "patch";
  rev: number;
  screen: string;
  sheet: string;
  groups: Record<string, string>;
  gone: string[];
  snaps: Snap[];
  whole: boolean;
};

export type Picture = {
  name: string;
  title: string;
  svg: string;
  view: [number, number, number, number];
  right: "+x" | "-x" | "+y" | "-y";
  up: "+y" | "+z";
  movable: string[];
  snaps: Snap[];
  layers: Choice[];
  off: string[];
};

export type PutIn = {
  name: string;
  text: string;
  path: string;
  line: number | null;
};

export type Reaction = {
  label: string;
  x_mm: number;
  kg: number;
  text: string;
  is_down: boolean;
};

export type Reason = {
  rule: Labelled[];
  compared: Labelled[];
  written: PutIn[];
  steps: Worked[];
  sources: string[];
};

export type Recover = {
  seq: number;
  base: number;
  t: "recover";
  take: boolean;
  text?: string | null;
  rev?: number;
};

export type Redo = {
  seq: number;
  base: number;
  t: "redo";
};

export type Rejoin = {
  seq: number;
  base: number;
  t: "rejoin";
  typed: Typed;
};

export type Reload = {
  t: "reload";
};

export type Rename = {
  seq: number;
  base: number;
  t: "rename";
  of: string;
  name: string;
};

export type Resolve = {
  seq: number;
  base: number;
  t: "resolve";
  disk_hash: string;
  text: string;
};

export type Screen = {
  name: string;
  title: string;
  explains: string;
  rev: number;
  empty: string;
  act: string;
  pictures: Picture[];
  charts: Chart[];
  tables: Table[];
  pages: Page[];
  notes: string[];
  findings: string[];
  words: Labelled[];
};

export type ScreenName = {
  name: string;
  label: string;
  group: "draw" | "work-out" | "on-file";
  explains: string;
};

export type Seek = {
  seq: number;
  base: number;
  t: "seek";
  code: string;
  where: string;
  load: string;
  use: string;
};

export type Series = {
  label: string;
  y: (number | null)[];
  low: (number | null)[];
  high: (number | null)[];
  texts: string[];
};

export type Set = {
  seq: number;
  base: number;
  t: "set";
  path: string;
  value: string;
};

export type ShownFinding = {
  key: string;
  code: string;
  where: string;
  use: string;
  kind: "stop" | "limit" | "fix" | "unknown" | "advice";
  word: string;
  says: string;
  act: string;
  source: string;
  line: number | null;
  column: number | null;
  screen: string;
  remedy: string;
  may_seek: boolean;
  may_accept: boolean;
  load: string;
  blanks: Blank[];
  explains: string;
};

export type ShownProblem = {
  line: number;
  column: number;
  end_line: number;
  end_column: number;
  path: string;
  says: string;
  kind: "problem" | "note";
};

export type Slot = {
  stage?: string;
  load?: string;
  vehicle?: string;
};

export type Snap = {
  axis: "x" | "y" | "z";
  mm: number;
  label: string;
  of: string;
};

export type State = {
  t: "state";
  program: string;
  place: string;
  heard: number;
  rev: number;
  has_file: boolean;
  file: string;
  rig: string;
  undo: number;
  redo: number;
  can_write: boolean;
  stages: Choice[];
  loads: Choice[];
  vehicles: Choice[];
  slot: Slot;
  screens: ScreenName[];
  demos: Ask[];
  asks: Ask[];
  left: string;
  terms: Record<string, string>;
};

export type Table = {
  title: string;
  columns: string[];
  rows: string[][];
  of: string[];
  names: Record<string, string>;
};

export type TakeOut = {
  seq: number;
  base: number;
  t: "take-out";
  of: string;
};

export type TextChange = {
  start: number;
  end: number;
  insert: string;
};

export type TextEdit = {
  seq: number;
  base: number;
  t: "text";
  changes: TextChange[];
};

export type TextIs = {
  t: "text";
  rev: number;
  length: number;
  by_another: boolean;
  changes: TextChange[];
  text: string | null;
};

export type Thing = {
  of: string;
  name: string;
  line: number | null;
  fields: ThingField[];
  says: string[];
  of_a_copy: string;
};

export type ThingField = {
  path: string;
  label: string;
  text: string;
  explains: string;
  is_length: boolean;
  wrong: string;
};

export type Turn = {
  seq: number;
  base: number;
  t: "turn";
  of: string;
};

export type Typed = {
  base?: number;
  known?: string | null;
  under: TextChange[];
  waits: TextChange[];
};

export type Undo = {
  seq: number;
  base: number;
  t: "undo";
};

export type Worked = {
  formula: string;
  given: PutIn[];
  with_numbers: string;
  result: string;
  source: string;
  checks: string[];
};

export type Working = {
  formula: string;
  put_in: string;
  result: string;
  source: string;
  checks: string[];
};

export type WriteMeasures = {
  seq: number;
  base: number;
  t: "write-measures";
  values: Record<string, string>;
};

export type Up = Hello | Look | Move | Cancel | Drop | Set | Add | Copy | TakeOut | Rename | Turn | Seek | Apply | Accept | TextEdit | Rejoin | BringBack | EnterReading | WriteMeasures | Undo | Redo | Resolve | KeepWriting | Recover | Begin;

export type Down = State | Numbers | NightIs | Patch | TextIs | Disk | No | Offered | Reload;
