// three.mjs FILE…: what three's loaders read from .glb, .stl and .3mf files.
// For each its meshes in order, as a page would meet them: name, what is
// known of it, triangles, volume and bounds in the scene's own unit, and the
// name of the face under the first triangle (.glb).
import { readFile } from "node:fs/promises";
import { extname } from "node:path";
import { DOMParser } from "linkedom";
import { Box3, Group, Mesh, Vector3 } from "three";
import { GLTFLoader } from "three/addons/loaders/GLTFLoader.js";
import { STLLoader } from "three/addons/loaders/STLLoader.js";
import { ThreeMFLoader } from "three/addons/loaders/3MFLoader.js";

globalThis.self = globalThis; // loaders expect a page
globalThis.DOMParser = DOMParser;

const readers = {
  ".glb": async (b) => (await new GLTFLoader().parseAsync(b, "")).scene,
  ".stl": async (b) => new Group().add(new Mesh(new STLLoader().parse(b))),
  ".3mf": async (b) => new ThreeMFLoader().parse(b),
};

function describe(mesh) {
  const g = mesh.geometry.index ? mesh.geometry.toNonIndexed() : mesh.geometry;
  const at = g.getAttribute("position");
  const corner = (i) => new Vector3().fromBufferAttribute(at, i).applyMatrix4(mesh.matrixWorld);
  let volume = 0, inward = 0;
  for (let i = 0; i < at.count; i += 3) {
    const [a, b, c] = [corner(i), corner(i + 1), corner(i + 2)];
    volume += a.dot(new Vector3().crossVectors(b, c)) / 6;
    const normals = g.getAttribute("normal");
    if (normals) {
      const out = new Vector3().crossVectors(b.clone().sub(a), c.clone().sub(a));
      const n = new Vector3().fromBufferAttribute(normals, i).transformDirection(mesh.matrixWorld);
      if (out.dot(n) < 0) inward++;
    }
  }
  const box = new Box3().setFromObject(mesh, true);
  const faces = g.getAttribute("_face");
  return {
    name: mesh.userData.name ?? mesh.name, parent: mesh.parent?.userData?.name ?? mesh.parent?.name ?? "",
    data: mesh.userData, triangles: at.count / 3, volume, inward, low: box.min.toArray(), high: box.max.toArray(),
    face: faces ? mesh.userData.faces?.[faces.getX(0)] : undefined, material: mesh.material?.name,
  };
}

const out = [];
for (const file of process.argv.slice(2)) {
  const b = await readFile(file);
  const scene = await readers[extname(file)](b.buffer.slice(b.byteOffset, b.byteOffset + b.length));
  scene.updateMatrixWorld(true);
  const meshes = [];
  scene.traverse((o) => { if (o.isMesh) meshes.push(describe(o)); });
  out.push(meshes);
}
console.log(JSON.stringify(out));
