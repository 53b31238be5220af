"""Turns a TensorFlow.js graph into a PyTorch module, one layer an operation, weights as trainable parameters."""

from collections import Counter

import numpy as np
import torch
import torch.nn.functional as F
from torch import nn

import layers

CONVOLUTIONS = {"_FusedConv2D", "Conv2D", "FusedDepthwiseConv2dNative", "DepthwiseConv2dNative"}
PASSED_ON = {"Cast", "Identity", "Unpack", "ExpandDims", "Squeeze"}
TWO_SIDED = {"Add": "Add", "AddV2": "Add", "Mul": "Mul", "Sub": "Sub"}


class CompiledGraph(nn.Module):
    """Runs the layers in order. Input and outputs are NCHW; the outputs come in the order asked for."""

    def __init__(self, steps, input_name, outputs):
        super().__init__()
        self.layers = nn.ModuleList(layer for _, layer, _ in steps)
        self.wiring = [(name, inputs) for name, _, inputs in steps]
        self.input_name = input_name
        self.outputs = outputs

    def forward(self, x):
        values = {self.input_name: x}
        for layer, (name, inputs) in zip(self.layers, self.wiring):
            values[name] = layer(*(values[i] for i in inputs))
        return [values[name] for name in self.outputs]


def streamlined(graph):
    """The same function in fewer passes over memory: hard swishes as one operation instead of four, paddings inside kernels.

    What is left out passes its input on, so that layers keep their numbers.
    """
    layer = {name: layer for (name, _), layer in zip(graph.wiring, graph.layers)}
    inputs = dict(graph.wiring)
    uses = Counter(i for _, several in graph.wiring for i in several)

    def is_(name, kind, **wanted):
        found = layer.get(name)
        return isinstance(found, kind) and all(getattr(found, k) == v for k, v in wanted.items())

    for name, several in graph.wiring:
        if not is_(name, layers.Pairwise, operation="Mul"):
            continue
        scaled, gate = several
        if not is_(scaled, layers.Constant, operation="Mul") or not is_(gate, layers.Activation, function=F.relu6):
            continue
        raised = inputs[gate][0]
        plain = is_(raised, layers.Constant, operation="Add", value=3) and inputs[raised] == inputs[scaled]
        if plain and all(uses[i] == 1 for i in (scaled, gate, raised)):
            layer[name] = layers.HardSwish(float(layer[scaled].value))
            inputs[name] = inputs[scaled]
            for left_out in (scaled, gate, raised):
                layer[left_out] = layers.Same()
    steps = [
        (name, layer[name].evened() if isinstance(layer[name], layers.Convolution) else layer[name], inputs[name])
        for name, _ in graph.wiring
    ]
    return CompiledGraph(steps, graph.input_name, graph.outputs)


def compile_graph(graph, outputs, channels_of_output=None):
    """The part of the graph that the outputs need.

    channels_of_output: for a convolution's name, the number of its first channels to keep.
    """
    keep = channels_of_output or {}
    steps, input_name = [], None
    for node in graph.needed_for(outputs):
        if node.operation == "Placeholder":
            input_name = node.name
        else:
            layer = _layer(graph, node, keep.get(node.name))
            steps.append((node.name, layer, [i for i in node.inputs if i not in graph.constants]))
    return CompiledGraph(steps, input_name, outputs)


def _layer(graph, node, keep):
    operation, constants = node.operation, graph.constants
    if operation in CONVOLUTIONS:
        return _convolution(graph, node, keep)
    if operation in PASSED_ON:
        return layers.Same()
    if operation in layers.Activation.FUNCTIONS:
        return layers.Activation(operation)
    if operation in TWO_SIDED:
        return _two_sided(graph, node)
    if operation == "Mean":
        _require(node, sorted(constants[node.inputs[1]].reshape(-1).tolist()) == [1, 2])
        return layers.SpatialMean()
    if operation == "ConcatV2":
        _require(node, int(constants[node.inputs[-1]]) in (3, -1))
        return layers.Channels()
    if operation == "ResizeBilinear":
        _require(node, not node.attributes.get("align_corners"))
        return layers.DoubleSize(bool(node.attributes.get("half_pixel_centers")))
    raise ValueError(f"{node.name}: operation {operation} is not handled")


def _two_sided(graph, node):
    first, second = node.inputs
    if first not in graph.constants and second not in graph.constants:
        _require(node, TWO_SIDED[node.operation] != "Sub")
        return layers.Pairwise(TWO_SIDED[node.operation])
    constant_first = first in graph.constants
    operation = TWO_SIDED[node.operation]
    if constant_first and operation == "Sub":
        operation = "RSub"
    return layers.Constant(operation, _channels_first(graph.constants[first if constant_first else second]))


def _channels_first(value):
    """A constant that TensorFlow broadcasts against NHWC, for NCHW; a scalar where all its values agree."""
    if value.size and np.all(value == value.reshape(-1)[0]):
        return torch.tensor(float(value.reshape(-1)[0]))
    return torch.from_numpy(np.array(value, np.float32)).reshape(1, -1, 1, 1)


def _convolution(graph, node, keep):
    weight = torch.from_numpy(graph.constants[node.inputs[1]])
    depthwise = "epthwise" in node.operation
    if depthwise:
        height, width, channels, multiplier = weight.shape
        weight = weight.permute(2, 3, 0, 1).reshape(channels * multiplier, 1, height, width)
    else:
        channels = 1
        weight = weight.permute(3, 2, 0, 1)
    functions = [f for f in node.attributes.get("fused_ops", []) if f != "BiasAdd"]
    _require(node, len(functions) <= 1 and set(functions) <= {"Relu", "Relu6"})
    _require(node, set(node.attributes.get("dilations", [1])) == {1})
    has_bias = "BiasAdd" in node.attributes.get("fused_ops", [])
    bias = torch.from_numpy(graph.constants[node.inputs[2]].reshape(-1)) if has_bias else torch.zeros(weight.shape[0])
    if keep:
        weight, bias = weight[:keep], bias[:keep]
    stride = node.attributes["strides"][1]
    same = node.attributes["padding"] == "SAME"
    padding = [layers.same_padding(side, stride) if same else (0, 0) for side in weight.shape[2:]]
    activation = functions[0] if functions else ""
    return layers.Convolution(
        weight.contiguous(), bias.clone(), stride, padding, channels if depthwise else 1, activation
    )


def _require(node, condition):
    if not condition:
        raise ValueError(f"{node.name}: {node.operation} with {node.attributes} is not handled")
