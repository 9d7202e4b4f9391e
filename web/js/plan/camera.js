// What part of the plan shows: the world place of the middle and metres per pixel.

/** Of what is chosen the surroundings show as far as this share of its length, and at least so far. */
const AROUND = 0.5, LEAST_AROUND_M = 2.5;
const MARGIN_PX = 60, TOOLS_PX = 34, FINEST_M_PER_PX = 1e-5, LEAST_FIT_M_PER_PX = 1e-4;

export class Camera {
  /** @param {SVGSVGElement} svg that it looks through */
  constructor(svg) {
    this.svg = svg;
    this.x = 0;
    this.y = 0;
    this.perPx = 1;
  }

  /** Width and height of the drawing in pixels. */
  size() {
    return {w: this.svg.clientWidth || 600, h: this.svg.clientHeight || 400};
  }

  toWorld([px, py]) {
    const {w, h} = this.size();
    return [this.x + (px - w / 2) * this.perPx, this.y - (py - h / 2) * this.perPx];
  }

  toPixel(p) {
    const {w, h} = this.size();
    return [(p[0] - this.x) / this.perPx + w / 2, h / 2 - (p[1] - this.y) / this.perPx];
  }

  /** The corner places, [west, south, east, north]. */
  bounds() {
    const {w, h} = this.size(), dx = w / 2 * this.perPx, dy = h / 2 * this.perPx;
    return [this.x - dx, this.y - dy, this.x + dx, this.y + dy];
  }

  sees(p) {
    const [west, south, east, north] = this.bounds();
    return p[0] > west && p[0] < east && p[1] > south && p[1] < north;
  }

  centreOn(p) {
    [this.x, this.y] = p;
  }

  move(dx, dy) {
    this.x += dx;
    this.y += dy;
  }

  /** Shows all of a box. */
  fit({lo, hi}) {
    const {w, h} = this.size();
    this.centreOn([(lo[0] + hi[0]) / 2, (lo[1] + hi[1]) / 2]);
    this.perPx = Math.max((hi[0] - lo[0]) / (w - MARGIN_PX), (hi[1] - lo[1]) / (h - MARGIN_PX - TOOLS_PX), LEAST_FIT_M_PER_PX);
    // Clear of the buttons at the foot.
    this.y -= this.perPx * TOOLS_PX / 2;
  }

  /** Shows places and what lies around them, but no more than a box of everything. */
  goTo(points, all) {
    const lo = [0, 1].map(i => Math.min(...points.map(p => p[i]))), hi = [0, 1].map(i => Math.max(...points.map(p => p[i])));
    const pad = Math.max(LEAST_AROUND_M, AROUND * Math.hypot(hi[0] - lo[0], hi[1] - lo[1]));
    this.fit(all);
    const whole = this.perPx;
    this.fit({lo: lo.map(x => x - pad), hi: hi.map(x => x + pad)});
    if (this.perPx >= whole) this.fit(all);
  }

  /** Zooms about a pixel, or about the middle. */
  zoom(factor, at) {
    const p = at ? this.toWorld(at) : [this.x, this.y];
    this.x = p[0] + (this.x - p[0]) * factor;
    this.y = p[1] + (this.y - p[1]) * factor;
    this.perPx = Math.max(FINEST_M_PER_PX, this.perPx * factor);
  }

  /** Shows what it looks at; SVG counts down the sheet, the world up. */
  apply() {
    const [west, , , north] = this.bounds(), {w, h} = this.size();
    this.svg.setAttribute('viewBox', `${west} ${-north} ${w * this.perPx} ${h * this.perPx}`);
  }
}
