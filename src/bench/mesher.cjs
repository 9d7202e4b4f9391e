// What the benchmark compares with: web-ifc, a general-purpose mesher of IFC models.
//   node mesher.cjs open MODEL     opens the model
//   node mesher.cjs mesh MODEL     opens it and meshes roofs, slabs, walls, chimneys and coverings
// It is found in the folder that the environment variable NODE_PATH names.
const fs = require('fs');
const ifc = require('web-ifc');

const TYPES = ['IFCROOF', 'IFCSLAB', 'IFCSLABSTANDARDCASE', 'IFCSLABELEMENTEDCASE', 'IFCWALL', 'IFCWALLSTANDARDCASE', 'IFCWALLELEMENTEDCASE',
  'IFCCHIMNEY', 'IFCCOVERING'];

async function main(mode, path) {
  const api = new ifc.IfcAPI();
  await api.Init();
  api.SetLogLevel(ifc.LogLevel.LOG_LEVEL_OFF);
  const file = fs.openSync(path, 'r');
  // Reads on demand: the file as a whole never stands in Node's memory.
  const model = api.OpenModelFromCallback((offset, size) => {
    const bytes = new Uint8Array(size);
    return bytes.subarray(0, fs.readSync(file, bytes, 0, size, offset));
  });
  if (model < 0) {
    throw new Error('cannot open ' + path);
  }
  let meshes = 0;
  if (mode === 'mesh') {
    api.StreamAllMeshesWithTypes(model, TYPES.map((name) => ifc[name]).filter((type) => type !== undefined), () => meshes++);
  }
  process.stdout.write(`${mode}: ${meshes} elements meshed\n`);
}

main(process.argv[2], process.argv[3]).catch((e) => {
  process.stderr.write(String(e && e.message || e) + '\n');
  process.exit(1);
});
