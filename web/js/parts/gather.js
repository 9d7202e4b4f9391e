// What a user drops or chooses, as files: folders are walked through, and an archive of several models is taken apart.

const MODEL = /\.(ifc|ifczip|ifc\.gz|gz|zip|json)$/i;
const END_OF_DIRECTORY = 0x06054b50, DIRECTORY_ENTRY = 0x02014b50;
const END_BYTES = 22, ENTRY_BYTES = 46, LOCAL_BYTES = 30, LONGEST_COMMENT = 65535;
const STORED = 0, DEFLATED = 8;

/**
 * The files of a drop: of folders those that may be models or a roof system.
 * @param {DataTransfer} data
 * @returns {Promise<File[]>}
 */
export async function dropped(data) {
  const entries = [...data.items ?? []].map(i => i.webkitGetAsEntry?.()).filter(Boolean);
  if (!entries.some(e => e.isDirectory)) return unpacked([...data.files]);
  return unpacked((await Promise.all(entries.map(e => walk(e)))).flat());
}

async function walk(entry) {
  if (entry.isFile) return new Promise((resolve, reject) => { entry.file(f => resolve([f]), reject); });
  const reader = entry.createReader(), all = [];
  // A reader gives a hundred at a time.
  for (let some = [null]; some.length;) {
    some = await new Promise((resolve, reject) => { reader.readEntries(resolve, reject); });
    all.push(...some);
  }
  return modelsOf((await Promise.all(all.map(e => walk(e)))).flat());
}

/** Of a folder's files those that may be models or a roof system, in the order of their names. */
export const modelsOf = files => files.filter(f => MODEL.test(f.name)).sort((a, b) => a.name.localeCompare(b.name, 'en'));

/** Files with those that archives of several models hold in the archives' place. */
export async function unpacked(files) {
  return (await Promise.all(files.map(f => /\.zip$/i.test(f.name) ? unzip(f).catch(() => [f]) : [f]))).flat();
}

/** The models of an archive, where it holds several; else the archive as it is, which the service reads by itself. */
async function unzip(file) {
  const entries = (await directory(file)).filter(e => MODEL.test(e.name) && !/(^|\/)(\.|__MACOSX)/.test(e.name));
  if (entries.length < 2) return [file];
  return Promise.all(entries.map(e => taken(file, e)));
}

const view = async blob => new DataView(await blob.arrayBuffer());

async function directory(file) {
  const from = Math.max(0, file.size - END_BYTES - LONGEST_COMMENT), tail = await view(file.slice(from));
  let end = tail.byteLength - END_BYTES;
  while (end >= 0 && tail.getUint32(end, true) !== END_OF_DIRECTORY) end--;
  if (end < 0) return [];
  const size = tail.getUint32(end + 12, true), start = tail.getUint32(end + 16, true), d = await view(file.slice(start, start + size));
  const entries = [];
  for (let at = 0; at + ENTRY_BYTES <= d.byteLength && d.getUint32(at, true) === DIRECTORY_ENTRY;) {
    const [name, extra, comment] = [28, 30, 32].map(k => d.getUint16(at + k, true));
    entries.push({method: d.getUint16(at + 10, true), packed: d.getUint32(at + 20, true), local: d.getUint32(at + 42, true),
      name: new TextDecoder().decode(new Uint8Array(d.buffer, at + ENTRY_BYTES, name))});
    at += ENTRY_BYTES + name + extra + comment;
  }
  return entries;
}

/** One file of an archive; how it is packed decides, another way than the two usual ones is refused. */
async function taken(file, e) {
  const head = await view(file.slice(e.local, e.local + LOCAL_BYTES));
  const from = e.local + LOCAL_BYTES + head.getUint16(26, true) + head.getUint16(28, true), bytes = file.slice(from, from + e.packed);
  if (e.method !== STORED && e.method !== DEFLATED) throw new Error('packed otherwise');
  const plain = e.method === STORED ? bytes : await new Response(bytes.stream().pipeThrough(new DecompressionStream('deflate-raw'))).blob();
  return new File([plain], e.name.split('/').pop(), {lastModified: file.lastModified});
}
