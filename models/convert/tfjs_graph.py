"""Reads a TensorFlow.js graph model: the nodes as they stand in the JSON, the constants as numpy arrays."""

import base64
import json
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np

STORED_TYPES = {"float32": np.float32, "int32": np.int32, "bool": np.bool_}


@dataclass(frozen=True)
class Node:
    """One operation: its inputs are names of nodes or constants, control inputs left out."""

    name: str
    operation: str
    inputs: list
    attributes: dict = field(repr=False)


@dataclass(frozen=True)
class Graph:
    """A model's operations by name, and its constants by name."""

    nodes: dict
    constants: dict

    def needed_for(self, outputs):
        """The nodes that the outputs depend on, each after its inputs."""
        ordered, entered = [], set()
        stack = [(name, False) for name in reversed(outputs)]
        while stack:
            name, inputs_done = stack.pop()
            if inputs_done:
                ordered.append(self.nodes[name])
            elif name in self.nodes and name not in entered:
                entered.add(name)
                stack.append((name, True))
                stack.extend((i, False) for i in reversed(self.nodes[name].inputs))
        return ordered


def read_graph(json_file):
    """Reads NAME.json and the weight files that it names, which lie beside it."""
    json_file = Path(json_file)
    description = json.loads(json_file.read_text())
    constants = {}
    for group in description["weightsManifest"]:
        raw = b"".join((json_file.parent / path).read_bytes() for path in group["paths"])
        constants.update(_constants(group["weights"], raw))
    nodes = {}
    for entry in description["modelTopology"]["node"]:
        if entry["op"] != "Const":
            nodes[entry["name"]] = _node(entry)
    return Graph(nodes, constants)


def _node(entry):
    inputs = [name.split(":")[0] for name in entry.get("input", []) if not name.startswith("^")]
    attributes = {key: _plain(value) for key, value in entry.get("attr", {}).items()}
    return Node(entry["name"], entry["op"], inputs, attributes)


def _plain(value):
    """An attribute's protocol-buffer value as a Python one."""
    kind, content = next(iter(value.items()))
    if kind == "s":
        return _text(content)
    if kind == "i":
        return int(content)
    if kind == "list":
        if "i" in content:
            return [int(i) for i in content["i"]]
        return [_text(s) for s in content.get("s", [])]
    return content


def _text(encoded):
    return base64.b64decode(encoded).decode("ascii")


def _constants(specifications, raw):
    constants, offset = {}, 0
    for spec in specifications:
        count = int(np.prod(spec["shape"]))
        half = spec.get("quantization", {}).get("dtype") == "float16"
        if "quantization" in spec and not half:
            raise ValueError(f"{spec['name']}: quantisation other than float16 is not handled")
        stored = np.dtype(np.float16 if half else STORED_TYPES[spec["dtype"]])
        values = np.frombuffer(raw, stored, count, offset).reshape(spec["shape"])
        constants[spec["name"]] = values.astype(np.float32) if half else values.copy()
        offset += count * stored.itemsize
    if offset != len(raw):
        raise ValueError(f"weights hold {len(raw)} bytes, the manifest describes {offset}")
    return constants
