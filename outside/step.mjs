// step.mjs FILE…: what Open CASCADE (by way of replicad) makes of STEP files.
// For each: its solids in order, with volume (mm³), number of faces, bounds
// (mm) and whether BRepCheck finds them valid; and whether the whole is.
import { readFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import opencascade from "replicad-opencascadejs";
import { setOC, importSTEP, iterTopo, cast, measureVolume } from "replicad";

const wasm = join(dirname(fileURLToPath(import.meta.resolve("replicad-opencascadejs"))), "replicad_single.wasm");
const oc = await opencascade({ locateFile: () => wasm, print: () => {}, printErr: () => {} });
setOC(oc);

const valid = (shape) => new oc.BRepCheck_Analyzer(shape.wrapped, true, false, false).IsValid();

function solid(s) {
  const [low, high] = s.boundingBox.bounds;
  return { volume: measureVolume(s), faces: s.faces.length, valid: valid(s), low, high };
}

async function read(file) {
  try {
    const shape = await importSTEP(new Blob([await readFile(file)]));
    const solids = [...iterTopo(shape.wrapped, "solid")].map((s) => solid(cast(s)));
    return { valid: valid(shape), solids };
  } catch (e) {
    return { error: String(e?.message ?? e) };
  }
}

const out = [];
for (const file of process.argv.slice(2)) out.push(await read(file));
console.log(JSON.stringify(out));
process.exit(0);
