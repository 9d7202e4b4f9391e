// A section across the junction, to scale: the panels at their measured slopes, the metal, and every line of tape, bead and fasteners that
// the result lists, in the order of its lists. It shows how the parts lie to each other; the detail's own drawing governs.

import {h, s} from './dom.js';
import {measure} from './ledger.js';
import {small, degrees} from './units.js';

const REACH = 300;                       // millimetres of roof on each side
const TWO = new Set(['ridge', 'hip', 'transition-convex', 'transition-concave', 'valley', 'level-valley']);
const CONCAVE = new Set(['valley', 'level-valley']);
const TO_WALL = new Set(['headwall', 'curb-downslope', 'skew-wall', 'low-wall', 'curb-upslope']);
const BESIDE = new Set(['sidewall', 'curb-side']);

export function section(j, ledger) {
  const sizes = readSizes(ledger.raw.system ?? {});
  const b = new Board(j, sizes);
  const draw = TWO.has(j.kind) ? (CONCAVE.has(j.kind) ? valley : ridge) : TO_WALL.has(j.kind) ? wall : BESIDE.has(j.kind) ? beside : j.kind === 'pipe' ? pipe : edge;
  draw(b);
  return h('section', {}, h('h3', {}, 'Section across the line'), b.finish());
}

function readSizes(system) {
  const mm = (v, otherwise) => (measure(v) ?? otherwise) * 1000;
  return {
    seam: mm(system.panel?.seamHeight ?? system.seamHeight, 0.0381), coverage: mm(system.panel?.coverage ?? system.panelCoverage, 0.4064),
    tapeWide: mm(system.tape?.width ?? system.tapeWidth, 0.022225), tapeThick: mm(system.tape?.thickness ?? system.tapeThickness, 0.0047625),
    bead: mm(system.bead?.size ?? system.beadDiameter, 0.00635), lip: mm(system.closure?.lip, 0.0254),
  };
}

/** Collects what is drawn, in millimetres, y up. */
class Board {
  constructor(j, size) {
    this.j = j;
    this.size = size;
    this.out = [];
    this.box = [0, 0, 0, 0];
    this.notes = [];
    const seals = j.seals ?? [];
    this.tapes = seals.filter(x => x.form === 'tape');
    this.hidden = seals.filter(x => x.form === 'bead' && x.exposure !== 'exposed');
    this.seen = seals.filter(x => x.form === 'bead' && x.exposure === 'exposed');
    this.made = (j.metal ?? []).length > 0;
    const f = j.facts ?? {};
    this.low = f.lowRiseDegrees ?? -(f.slopeDegrees ?? 0);
    this.high = f.highRiseDegrees ?? this.low;
    if (f.lowRiseDegrees === undefined && /^(eave|valley|level-valley|low-wall|curb-upslope)$/.test(j.kind)) { this.low = -this.low; this.high = -this.high; }
    if (/^(rake|sidewall|curb-side)$/.test(j.kind)) { this.low = 0; this.high = 0; }
  }

  see(points) {
    for (const [x, y] of points) this.box = [Math.min(this.box[0], x), Math.min(this.box[1], y), Math.max(this.box[2], x), Math.max(this.box[3], y)];
    return points.map(([x, y]) => `${x.toFixed(1)} ${(-y).toFixed(1)}`).join('L');
  }

  line(points, cls) { this.out.push(s('path', {d: 'M' + this.see(points), class: cls})); }
  fill(points, cls) { this.out.push(s('path', {d: 'M' + this.see(points) + 'Z', class: cls})); }
  dot([x, y], r, cls) { this.see([[x, y]]); this.out.push(s('circle', {cx: x.toFixed(1), cy: (-y).toFixed(1), r, class: cls})); }

  /** One roof panel going out from a point at an angle; returns the frame in which its parts are placed. */
  panel(from, rise, sense, start) {
    const a = rise * Math.PI / 180, t = [sense * Math.cos(a), Math.sin(a)], n = [-sense * Math.sin(a), Math.cos(a)];
    const at = (d, up = 0) => [from[0] + t[0] * d + n[0] * up, from[1] + t[1] * d + n[1] * up];
    this.line([at(start), at(REACH)], 'sheet-metal');
    this.line([at(start, this.size.seam), at(REACH, this.size.seam)], 'seam-top');
    return at;
  }

  tape(at, d, up, what) {
    if (!what) return;
    const {tapeWide: w, tapeThick: t} = this.size;
    this.fill([at(d, up), at(d + w, up), at(d + w, up + t), at(d, up + t)], 'tape');
    this.note('tape', `Tape: ${what.place}`);
  }

  bead(p, what, seen) {
    if (!what) return;
    this.dot(p, this.size.bead / 2, seen ? 'bead seen' : 'bead');
    this.note(seen ? 'bead seen' : 'bead', `${seen ? 'Visible bead' : 'Bead'}: ${what.place}`);
  }

  screw(at, d, up, deep = 18) {
    if (!(this.j.fasteners ?? []).length) return;
    this.line([at(d, up + 3), at(d, up - deep)], 'screw');
    this.line([at(d - 5, up + 3), at(d + 5, up + 3)], 'screw');
    this.note('screw', `Fasteners: ${[...new Set(this.j.fasteners.map(x => x.place))].join(', ')}`);
  }

  /** A closure standing between two seams on its tape, tape on its top, a bead behind it; returns the height of its top. */
  closure(at, d) {
    const {seam, lip, tapeThick: t} = this.size, up = this.tapes[0] ? t : 0;
    this.tape(at, d, 0, this.tapes[0]);
    this.line([at(d + lip, up), at(d, up), at(d, seam), at(d + lip, seam)], 'bent');
    this.screw(at, d + lip * 0.55, up);
    this.tape(at, d, seam, this.tapes[1]);
    this.bead(at(d - this.size.bead * 0.6, this.size.bead * 0.55), this.hidden[0]);
    return seam + (this.tapes[1] ? t : 0);
  }

  note(cls, text) { if (!this.notes.some(n => n[1] === text)) this.notes.push([cls, text]); }

  finish() {
    if (!this.made) this.note('', 'No detail is chosen: only the measured shape is drawn.');
    const pad = 18, [x0, y0, x1, y1] = this.box, w = x1 - x0 + 2 * pad, hh = y1 - y0 + 2 * pad;
    return h('figure', {class: 'section-figure'},
      s('svg', {class: 'drawing-section', viewBox: `${x0 - pad} ${-y1 - pad} ${w} ${hh}`, role: 'img', 'aria-label': `Section: ${this.notes.map(n => n[1]).join('; ') || 'shape only'}`}, this.out),
      h('figcaption', {}, h('span', {class: 'scale-note'}, `${small(w / 1000)} wide, to scale. `),
        this.notes.map(([cls, text]) => h('span', {class: 'key'}, cls && h('i', {class: 'sign ' + cls, 'aria-hidden': 'true'}), text))));
  }
}

const slopeNote = (b, left, right) => b.note('sheet-metal', right === undefined ? `Panel at ${degrees(Math.abs(left))}` : `Panels at ${degrees(Math.abs(left))} and ${degrees(Math.abs(right))}`);

/** Convex lines, and level breaks: closures on the panels that fall away, a cap or flashing over both. */
function ridge(b) {
  const left = b.panel([0, 0], b.low, -1, 22), right = b.panel([0, 0], b.high, 1, 22), {lip} = b.size;
  slopeNote(b, b.low, b.high);
  if (!b.made) return;
  const top = b.closure(left, 60), over = b.high < 0 ? b.closure(right, 60) : b.size.seam;
  if (b.high >= 0) { b.tape(right, 55, 0, b.tapes[2] ?? b.tapes[0]); b.line([right(50, 0), right(50 + lip * 1.4, 6)], 'bent'); }
  const apex = [0, Math.max(left(0, top)[1], right(0, over)[1]) + 4];
  b.line([left(60 + lip + 22, top - 9), left(60 + lip + 26, top), left(30, top), apex, right(30, over), right(60 + lip + 26, over), right(60 + lip + 22, over - 9)], 'cap');
  b.note('cap', b.j.metal.map(m => m.part).pop());
}

/** Concave lines: a pan in the line, cleats on it, panel ends hooked over them. */
function valley(b) {
  const left = b.panel([0, 8], b.low, -1, 118), right = b.panel([0, 8], b.high, 1, 118);
  slopeNote(b, b.low, b.high);
  if (!b.made) return;
  b.line([left(205, -12), left(205, -8), left(0, -8), [0, 14], right(0, -8), right(205, -8), right(205, -12)], 'cap');
  b.note('cap', b.j.metal[0].part);
  for (const at of [left, right]) {
    b.tape(at, 150, -8, b.tapes[0]);
    b.line([at(185, -3), at(128, -3), at(118, -3), at(114, 1), at(122, 4)], 'bent');
    b.screw(at, 161, -3);
    b.line([at(122, 0), at(110, -2), at(110, -6), at(126, -6)], 'sheet-metal');
    b.bead(at(134, 3), b.hidden[0]);
  }
}

/** A wall across the fall: above the face a closure and a flashing, below it a pan turned up against the wall. */
function wall(b) {
  const up = Math.min(Math.max(60, (b.j.facts?.upstandM ?? 0.25) * 1000), 260);
  b.fill([[0, -60], [0, up + 30], [60, up + 30], [60, -60]], 'masonry');
  const drains = b.low > 0, at = b.panel([0, 0], b.low, -1, drains ? 130 : 14);
  slopeNote(b, b.low);
  b.note('masonry', `${b.j.facts?.neighbourClass ?? 'Wall'}, ${small(b.j.facts?.upstandM)} above the roof`);
  if (!b.made) return;
  const h1 = Math.min(up - 12, 150);
  if (drains) {
    b.line([at(215, -8), at(14, -8), [-4, at(14, -8)[1]], [-4, h1]], 'cap');
    b.tape(at, 160, -8, b.tapes[0]);
    b.line([at(190, -3), at(134, -3), at(128, 2)], 'bent');
    b.screw(at, 172, -3);
    b.bead(at(140, 4), b.hidden[0]);
  } else {
    const top = b.closure(at, 40);
    b.line([at(96, top - 9), at(100, top), at(14, top), [-4, at(14, top)[1]], [-4, h1]], 'cap');
  }
  counterflashing(b, -4, h1);
}

function counterflashing(b, x, top) {
  b.note('cap', [...new Set(b.j.metal.map(m => m.part))].slice(-2).join(', '));
  if (b.j.metal.length < 2 && !b.seen.length) return;
  b.line([[x + 20, top + 14], [x, top + 14], [x - 3, top + 8], [x - 3, top - 42], [x - 9, top - 48]], 'bent');
  b.bead([x - 2, top + 16 + b.size.bead * 0.3], b.seen[0], true);
}

/** A wall along the fall: the section cuts the panel between its seams. */
function beside(b) {
  const up = Math.min(Math.max(60, (b.j.facts?.upstandM ?? 0.25) * 1000), 260), {seam} = b.size;
  b.fill([[0, -60], [0, up + 30], [60, up + 30], [60, -60]], 'masonry');
  b.line([[-REACH, 0], [-14, 0]], 'sheet-metal');
  b.line([[-190, 0], [-190, seam], [-184, seam], [-184, 0]], 'sheet-metal');
  b.note('sheet-metal', 'Panel and seam, cut across the fall');
  b.note('masonry', `${b.j.facts?.neighbourClass ?? 'Wall'}, ${small(b.j.facts?.upstandM)} above the roof`);
  if (!b.made) return;
  const at = (d, y = 0) => [-d, y], t = b.tapes[0] ? b.size.tapeThick : 0, h1 = Math.min(up - 12, 150);
  b.tape(at, 60, 0, b.tapes[0]);
  b.line([at(112, t + 8), at(112, t), at(6, t), at(6, h1)], 'cap');
  b.screw(at, 71, t);
  b.bead(at(52, t + 3), b.hidden[0]);
  counterflashing(b, -6, h1);
}

/** A free edge: the panel end hooked over trim. */
function edge(b) {
  const across = Math.abs(b.low) < 0.5, at = b.panel([0, 0], b.low, -1, 0), {seam} = b.size;
  if (across) b.line([[-190, 0], [-190, seam], [-184, seam], [-184, 0]], 'sheet-metal');
  b.fill([at(24, -20), at(REACH, -20), at(REACH, -44), at(24, -44), [-24, -150], [-44, -150], [-44, at(44, -44)[1]]].slice(0, 4), 'masonry');
  slopeNote(b, b.low);
  if (!b.made) return;
  const high = b.j.kind === 'high-edge';
  if (high) {
    const top = b.closure(at, 50);
    b.line([at(106, top - 9), at(110, top), at(0, top), [10, at(0, top)[1] - 4], [10, -90], [20, -100]], 'cap');
  } else {
    b.tape(at, 40, -b.size.tapeThick, b.tapes[0]);
    b.line([at(120, -7), at(0, -7), [4, -12], [4, -80], [14, -92]], 'cap');
    b.line([at(24, 0), at(-12, 0), at(-14, -6), at(-2, -6)], 'sheet-metal');
    b.screw(at, 90, -7);
    b.bead(at(30, 3), b.hidden[0]);
  }
  b.note('cap', [...new Set(b.j.metal.map(m => m.part))].join(', '));
}

/** A pipe with its boot, cut along the fall. */
function pipe(b) {
  const r = Math.min(150, (b.j.facts?.diameterM ?? 0.1) * 500), a = (b.j.facts?.slopeDegrees ?? 0) * Math.PI / 180, tan = Math.tan(a);
  const on = x => [x, x * tan], {seam} = b.size;
  b.fill([[-r, -60 - r * tan], [-r, 230], [r, 230], [r, -60 + r * tan]], 'masonry');
  b.line([on(-REACH), on(-r - 2)], 'sheet-metal');
  b.line([on(r + 2), on(REACH)], 'sheet-metal');
  b.line([[-REACH, -REACH * tan + seam], [-r - 90, (-r - 90) * tan + seam]], 'seam-top');
  b.note('masonry', `Pipe, ${small(b.j.facts?.diameterM)} across`);
  b.note('sheet-metal', `Panel at ${degrees(b.j.facts?.slopeDegrees)}`);
  if (!b.made) return;
  const f = r + 55, up = b.size.tapeThick;
  for (const sense of [-1, 1]) {
    const at = (d, y = 0) => [sense * d, sense * d * tan + y];
    b.tape((d, y = 0) => at(r + 20 + d, y), 8, 0, b.tapes[0]);
    b.line([at(f, up), at(r + 14, up), [sense * (r + 3), 90], [sense * (r + 3), 140]], 'cap');
    b.screw((d, y = 0) => at(r + 20 + d, y), 19, up);
    b.bead([sense * (r + 4), 143], b.seen[0] ?? b.hidden[0], Boolean(b.seen[0]));
  }
  b.note('cap', [...new Set(b.j.metal.map(m => m.part))].join(', '));
}
