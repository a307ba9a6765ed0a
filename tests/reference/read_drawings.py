"""Reads DXF files with ezdxf and prints what a second reader finds in them, as JSON: faults, and closed shapes."""

import json
import math
import sys

import ezdxf
from ezdxf import bbox

TOOLS = ("CUT-OUTSIDE", "CUT-INSIDE", "DRILL")


def area(entity):
    if entity.dxftype() == "CIRCLE":
        return math.pi * entity.dxf.radius**2
    points = list(entity.get_points("xyb"))
    total = 0.0
    for (x0, y0, bulge), (x1, y1, _) in zip(points, points[1:] + points[:1]):
        total += (x0 * y1 - x1 * y0) / 2
        if bulge:
            sweep = 4 * math.atan(bulge)
            radius = math.hypot(x1 - x0, y1 - y0) / 2 / math.sin(sweep / 2)
            total += radius**2 * (sweep - math.sin(sweep)) / 2
    return total


def closed(entity):
    return entity.dxftype() == "CIRCLE" or (entity.dxftype() == "LWPOLYLINE" and entity.closed)


def describe(path):
    document = ezdxf.readfile(path)
    auditor = document.audit()
    shapes = [e for e in document.modelspace() if e.dxf.layer in TOOLS]
    box = bbox.extents([e for e in shapes if e.dxf.layer == "CUT-OUTSIDE"], flatten=1e-4)
    return {
        "faults": len(auditor.errors) + len(auditor.fixes),
        "units": document.header["$INSUNITS"],
        "closed": all(closed(e) for e in shapes),
        "areas": {layer: sum(area(e) for e in shapes if e.dxf.layer == layer) for layer in TOOLS},
        "size": [box.size.x, box.size.y] if box.has_data else None,
    }


print(json.dumps({path: describe(path) for path in sys.argv[1:]}))
