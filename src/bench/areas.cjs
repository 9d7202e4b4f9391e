// What a general-purpose mesher (web-ifc) says of the roof elements of a model, for areas.py:
//   node areas.cjs MODEL RESULT
// RESULT is what ./seamledger analyze MODEL --format json wrote. Prints one JSON object:
//   {"elements": {GlobalId: square metres of its mesh that look up, or null where there is no mesh}, "silhouetteM2", "facesM2", "bareM2"}
// The silhouette is the union of those meshes in plan, facesM2 that of the faces in the result, and bareM2 what of the silhouette lies under
// no face. All three are counted in cells of one grid.
// Upward is what isn't steeper than the result's own limit. A mesh that turns inside out is turned; of a mesh that encloses nothing all counts.
const fs = require('fs');
const ifc = require('web-ifc');

const CELLS = 1200;
const SHEET_M = 1e-4;

// Three corners in metres, z up, of every triangle of an element.
function triangles(api, model, mesh) {
  const all = [];
  for (let i = 0; i < mesh.geometries.size(); i++) {
    const placed = mesh.geometries.get(i);
    const geometry = api.GetGeometry(model, placed.geometryExpressID);
    const values = api.GetVertexArray(geometry.GetVertexData(), geometry.GetVertexDataSize());
    const index = api.GetIndexArray(geometry.GetIndexData(), geometry.GetIndexDataSize());
    const m = placed.flatTransformation;
    const corner = (k) => {
      const [x, y, z] = values.subarray(6 * k, 6 * k + 3);
      return [m[0] * x + m[4] * y + m[8] * z + m[12], -(m[2] * x + m[6] * y + m[10] * z + m[14]), m[1] * x + m[5] * y + m[9] * z + m[13]];
    };
    for (let t = 0; t + 2 < index.length; t += 3) {
      all.push([corner(index[t]), corner(index[t + 1]), corner(index[t + 2])]);
    }
    geometry.delete();
  }
  return all;
}

const minus = (a, b) => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

function upward(all, leastZ) {
  if (!all.length) {
    return null;
  }
  let up = 0;
  let down = 0;
  let volume = 0;
  let area = 0;
  const origin = all[0][0];
  for (const [a, b, c] of all) {
    const n = cross(minus(b, a), minus(c, a));
    const size = Math.hypot(...n) / 2;
    area += size;
    volume += dot(minus(a, origin), n) / 6;
    if (size && Math.abs(n[2]) / (2 * size) > leastZ) {
      up += n[2] > 0 ? size : 0;
      down += n[2] < 0 ? size : 0;
    }
  }
  return Math.abs(volume) < SHEET_M * area ? up + down : volume > 0 ? up : down;
}

// Marks the cells whose middle lies in rings in plan (even-odd).
function fill(grid, rings) {
  const edges = rings.flatMap((ring) => ring.map((p, i) => [p, ring[(i + 1) % ring.length]]));
  const low = Math.max(0, Math.floor((Math.min(...edges.map((e) => e[0][1])) - grid.y) / grid.cell));
  const high = Math.min(grid.rows - 1, Math.ceil((Math.max(...edges.map((e) => e[0][1])) - grid.y) / grid.cell));
  for (let row = low; row <= high; row++) {
    const y = grid.y + (row + 0.5) * grid.cell;
    const at = [];
    for (const [p, q] of edges) {
      if (p[1] <= y !== q[1] <= y) {
        at.push(p[0] + (y - p[1]) / (q[1] - p[1]) * (q[0] - p[0]));
      }
    }
    at.sort((s, t) => s - t);
    for (let k = 0; k + 1 < at.length; k += 2) {
      const from = Math.max(0, Math.ceil((at[k] - grid.x) / grid.cell - 0.5));
      const to = Math.min(grid.columns - 1, Math.ceil((at[k + 1] - grid.x) / grid.cell - 0.5) - 1);
      if (from <= to) {
        grid.cells.fill(1, row * grid.columns + from, row * grid.columns + to + 1);
      }
    }
  }
}

function gridOver(points) {
  const bound = (i, pick) => points.reduce((v, p) => pick(v, p[i]), points[0][i]);
  const [x, y, width, depth] = [bound(0, Math.min), bound(1, Math.min), bound(0, Math.max), bound(1, Math.max)];
  const cell = Math.max(width - x, depth - y) / CELLS || 1;
  const grid = { x: x - cell, y: y - cell, cell, columns: Math.ceil((width - x) / cell) + 2, rows: Math.ceil((depth - y) / cell) + 2 };
  return () => ({ ...grid, cells: new Uint8Array(grid.columns * grid.rows) });
}

async function main(path, resultPath) {
  const result = JSON.parse(fs.readFileSync(resultPath, 'utf8'));
  const wanted = new Set(result.coverage.map((c) => c.element));
  const leastZ = Math.cos(result.surfaceLimits.planes.steepestDegrees * Math.PI / 180);
  const api = new ifc.IfcAPI();
  await api.Init();
  api.SetLogLevel(ifc.LogLevel.LOG_LEVEL_OFF);
  const model = api.OpenModel(new Uint8Array(fs.readFileSync(path)));
  const meshes = new Map([...wanted].map((id) => [id, []]));
  api.StreamAllMeshes(model, (mesh) => {
    const id = api.GetLine(model, mesh.expressID).GlobalId.value;
    if (wanted.has(id)) {
      meshes.get(id).push(...triangles(api, model, mesh));
    }
  });
  const elements = Object.fromEntries([...meshes].map(([id, all]) => [id, upward(all, leastZ)]));
  const all = [...meshes.values()].flat();
  if (!all.length) {
    process.stdout.write(JSON.stringify({ elements, silhouetteM2: 0, facesM2: 0, bareM2: 0 }));
    return;
  }
  const empty = gridOver(all.flat());
  const [silhouette, faces] = [empty(), empty()];
  all.forEach((t) => fill(silhouette, [t]));
  result.roofFaces.flatMap((face) => face.facets).forEach((rings) => fill(faces, rings));
  const count = (is) => silhouette.cells.reduce((n, v, i) => n + (is(v, faces.cells[i]) ? 1 : 0), 0) * silhouette.cell ** 2;
  process.stdout.write(JSON.stringify({ elements, silhouetteM2: count((s) => s), facesM2: count((s, f) => f),
    bareM2: count((s, f) => s && !f) }));
}

main(process.argv[2], process.argv[3]).catch((e) => {
  process.stderr.write(String(e && e.message || e) + '\n');
  process.exit(1);
});
