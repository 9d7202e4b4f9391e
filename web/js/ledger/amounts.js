// Numbers of two orders side by side, as the service compares revisions.

/**
 * The numbers of two orders by their path.
 * @returns {import('../types.js').Amount[]}
 */
export function compareQuantities(before, after) {
  const a = numbers(before), b = numbers(after);
  const names = [...new Set([...Object.keys(a), ...Object.keys(b)])];
  return names.map(name => ({name, before: a[name] ?? null, after: b[name] ?? null}));
}

function numbers(node, path = '', into = {}) {
  for (const [k, v] of Object.entries(node ?? {})) {
    const name = path ? `${path}.${k}` : k;
    if (typeof v === 'number') into[name] = v;
    else if (v && typeof v === 'object' && !Array.isArray(v)) numbers(v, name, into);
  }
  return into;
}

/** Those that differ. */
export const differing = amounts =>
  amounts.filter(q => q.before === null || q.after === null || Math.abs(q.before - q.after) > 1e-9);
