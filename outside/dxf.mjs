// dxf.mjs FILE…: what dxf-parser reads: header, layers and entities as they are.
import { readFile } from "node:fs/promises";
import DxfParser from "dxf-parser";

const out = [];
for (const file of process.argv.slice(2)) {
  const d = new DxfParser().parseSync(await readFile(file, "latin1"));
  out.push({ header: d.header, layers: Object.keys(d.tables.layer.layers), entities: d.entities });
}
console.log(JSON.stringify(out));
