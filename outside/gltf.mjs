// gltf.mjs FILE…: the report of the Khronos validator on GLB files. For each:
// every message, of whatever severity, and the counts it found.
import { readFile } from "node:fs/promises";
import validator from "gltf-validator";

const out = [];
for (const file of process.argv.slice(2)) {
  const r = await validator.validateBytes(new Uint8Array(await readFile(file)));
  out.push({
    messages: r.issues.messages.map((m) => `${m.code} ${m.pointer ?? ""} ${m.message}`),
    vertices: r.info.totalVertexCount,
    triangles: r.info.totalTriangleCount,
    materials: r.info.materialCount,
    resources: r.info.resources,
  });
}
console.log(JSON.stringify(out));
