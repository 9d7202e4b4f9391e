// Labels of the plan: face names first, then lengths, longest first; a label that would lie over another is moved along its line, or
// left out.

import {put, s} from '../dom.js';
import {state} from '../state.js';
import {kindText} from '../ledger/marks.js';
import {kindOf} from '../ledger/result.js';
import {labelPlace, middle} from '../ledger/geometry.js';
import * as u from '../units.js';

const MOST_LABELS = 90, MOST_MEASURED = 4000, LEAST_FACE_PX = 60, LEAST_LINE_PX = 80;

/** Places that labels have taken. */
class Room {
  constructor(camera) {
    this.camera = camera;
    this.taken = [];
  }

  /** Takes a place of so many pixels; whether it was free and is in sight. */
  take(p, wide, high) {
    if (!this.camera.sees(p)) return false;
    const [x, y] = this.camera.toPixel(p), box = [x - wide / 2, y - high / 2, x + wide / 2, y + high / 2];
    if (this.taken.some(t => t[0] < box[2] && t[2] > box[0] && t[1] < box[3] && t[3] > box[1])) return false;
    this.taken.push(box);
    return true;
  }
}

/** @param {import('./camera.js').Camera} camera */
export function drawLabels(layer, camera) {
  const L = state.ledger, {perPx} = camera, room = new Room(camera), out = [];
  const chosen = L.byId.get(state.selected);
  if (chosen && room.take(middle(chosen), 150, 26)) out.push(lineLabel(chosen, middle(chosen), perPx, true));
  for (const f of L.faces.values()) {
    if (out.length >= MOST_LABELS) break;
    const at = labelPlace(f);
    if (at && Math.sqrt(f.planAreaM2) / perPx > LEAST_FACE_PX && room.take(at, 70, 18)) out.push(faceLabel(f, at, perPx));
  }
  // With the movement on, its own numbers stand at the lines.
  for (const j of state.movement ? [] : longest(L)) {
    if (out.length >= MOST_LABELS || j.lengthM / perPx < LEAST_LINE_PX) break;
    const at = j !== chosen && j.path.length === 2 && placeOn(j, room);
    if (at) out.push(lineLabel(j, at, perPx, false));
  }
  put(layer, out);
}

/** The first free place along a straight line. */
function placeOn(j, room) {
  const [a, b] = j.path, isSteep = Math.abs(b[1] - a[1]) > Math.abs(b[0] - a[0]);
  const places = [0.5, 0.3, 0.7].map(t => a.map((x, i) => x + (b[i] - x) * t));
  return places.find(p => isSteep ? room.take(p, 26, 56) : room.take(p, 56, 26));
}

const longest = L => L.longest ??= L.lines.slice().sort((a, b) => b.lengthM - a.lengthM).slice(0, MOST_MEASURED);

const faceLabel = (f, at, perPx) => s('text', {x: at[0], y: -at[1] - 4 * perPx, 'font-size': 12 * perPx, class: 'face-name'},
  f.id, s('tspan', {class: 'quiet'}, `  ${u.slope(f.slopeDegrees)}`));

/** Along the line, the right way up, a little above it. */
function lineLabel(j, m, perPx, isChosen) {
  const a = j.path[0], b = j.path[j.path.length - 1];
  let turn = Math.atan2(-(b[1] - a[1]), b[0] - a[0]) * 180 / Math.PI;
  if (Math.hypot(b[0] - a[0], b[1] - a[1]) < 1e-6) turn = 0;
  if (turn > 90) turn -= 180;
  if (turn <= -90) turn += 180;
  const text = isChosen ? `${kindText(kindOf(j))} ${u.length(j.lengthM)}` : u.length(j.lengthM);
  return s('text', {transform: `translate(${m[0]} ${-m[1]}) rotate(${turn})`, y: -6 * perPx, 'font-size': (isChosen ? 13 : 10.5) * perPx,
    class: isChosen ? 'line-name chosen' : 'line-name'}, text);
}
