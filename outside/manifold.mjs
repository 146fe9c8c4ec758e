// manifold.mjs FILE…: what Manifold makes of binary STL files: status
// (NoError if the mesh is a proper solid), volume (mm³), genus.
import { readFile } from "node:fs/promises";
import Module from "manifold-3d/manifold";

const lib = await Module();
lib.setup();
const { Manifold, Mesh } = lib;

// triangles joins corners that are the same to the last bit.
function triangles(b) {
  const n = b.readUInt32LE(80), known = new Map(), vertProperties = [], triVerts = [];
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < 3; k++) {
      const at = 84 + 50 * i + 12 + 12 * k;
      const v = [b.readFloatLE(at), b.readFloatLE(at + 4), b.readFloatLE(at + 8)];
      const key = v.join();
      if (!known.has(key)) { known.set(key, known.size); vertProperties.push(...v); }
      triVerts.push(known.get(key));
    }
  }
  return { numProp: 3, vertProperties: new Float32Array(vertProperties), triVerts: new Uint32Array(triVerts) };
}

const out = [];
for (const file of process.argv.slice(2)) {
  try {
    const solid = new Manifold(new Mesh(triangles(await readFile(file))));
    out.push({ status: solid.status(), volume: solid.volume(), genus: solid.genus() });
  } catch (e) {
    out.push({ status: String(e?.code ?? e), volume: 0, genus: 0 });
  }
}
console.log(JSON.stringify(out));
