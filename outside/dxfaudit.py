"""dxfaudit.py FILE...: what ezdxf finds wrong with DXF files, what it mended, and
what it reads."""

import json
import sys

import ezdxf
from ezdxf import recover
from ezdxf.disassemble import recursive_decompose, to_primitives


def length(entity):
    """Length of an entity along its curve, mm or in."""
    total = 0.0
    for p in to_primitives(recursive_decompose([entity]), max_flattening_distance=1e-5):
        if p.is_empty or entity.dxftype() == "TEXT":
            continue
        points = list(p.vertices())
        total += sum(a.distance(b) for a, b in zip(points, points[1:]))
    return total


def read(file):
    strict = ezdxf.readfile(file)  # refuses what recover would mend
    doc, auditor = recover.readfile(file)
    after = strict.audit()
    return {
        "version": doc.dxfversion,
        "units": doc.header.get("$INSUNITS", 0),
        "errors": [str(e.message) for e in list(auditor.errors) + list(after.errors)],
        "fixes": [str(e.message) for e in list(auditor.fixes) + list(after.fixes)],
        "layers": [l.dxf.name for l in doc.layers],
        "entities": [
            {"type": e.dxftype(), "layer": e.dxf.layer, "length": length(e), "text": e.dxf.text if e.dxftype() == "TEXT" else ""}
            for e in doc.modelspace()
        ],
    }


print(json.dumps([read(f) for f in sys.argv[1:]]))
