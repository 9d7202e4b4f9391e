// Seams in the plan. A roof with more of them than can be told apart has them drawn where one looks closely enough.

import {put, s} from '../dom.js';
import {state} from '../state.js';
import {mayShow, outline, trace} from './paths.js';

const MOST_SEAMS = 6000;
/** Where lines are hardly longer than a dash, neither dashes nor seams say anything. */
export const DENSE_M_PER_PX = 0.12;

export class SeamLayer {
  constructor(group) {
    this.group = group;
    this.forget();
  }

  /** Draws them anew the next time. */
  forget() {
    this.drawnFor = null;
  }

  /** Draws the seams that the camera sees, where that changed. */
  draw(camera) {
    const L = state.ledger, faces = [...L.faces.values()];
    L.seamCount ??= faces.reduce((t, f) => t + (f.seams?.lines?.length ?? 0), 0);
    if (L.seamCount <= MOST_SEAMS) {
      if (this.drawnFor !== L) put(this.group, seams(L, faces));
      this.drawnFor = L;
      return;
    }
    const bounds = camera.bounds(), near = camera.perPx > DENSE_M_PER_PX ? [] : faces.filter(f => mayShow(f, bounds));
    const key = near.map(f => f.id).join();
    if (this.drawnFor !== key) put(this.group, near.length > 0 && seams(L, near));
    this.drawnFor = key;
  }
}

/** Seams where the layout of the result puts them; where a result has none, as a pattern. */
function seams(L, faces) {
  const laid = faces.flatMap(f => f.seams?.lines ?? []);
  if (laid.length) return s('path', {d: laid.slice(0, 2 * MOST_SEAMS).map(trace).join('')});
  const total = faces.reduce((t, f) => t + Math.sqrt(f.planAreaM2) / L.coverageM, 0);
  return total > MOST_SEAMS ? null : faces.map((f, n) => pattern(f, n, L.coverageM));
}

/** Lines down the fall, one panel apart, cut off at the outline. */
function pattern(f, n, coverageM) {
  if (!(f.slopeDegrees > 0.5)) return null;
  const az = f.fallAzimuthDegrees * Math.PI / 180, down = [Math.sin(az), Math.cos(az)], across = [down[1], -down[0]];
  const pts = f.facets.flat(2), on = d => pts.map(p => p[0] * d[0] + p[1] * d[1]);
  const a = on(across), b = on(down), a0 = Math.min(...a), a1 = Math.max(...a), b0 = Math.min(...b), b1 = Math.max(...b);
  const at = (k, t) => [across[0] * k + down[0] * t, across[1] * k + down[1] * t];
  const d = [];
  for (let k = a0 + coverageM; k < a1 - 1e-6; k += coverageM) d.push(trace([at(k, b0), at(k, b1)]));
  return [s('clipPath', {id: 'cut' + n}, s('path', {d: outline(f), 'clip-rule': 'evenodd'})),
    s('path', {d: d.join(''), 'clip-path': `url(#cut${n})`})];
}
