export function section() { return null; }
