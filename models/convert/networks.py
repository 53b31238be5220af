"""The networks as the program uses them: pictures in, boxes or joints out, decoding included.

A picture is NHWC, 8-bit, blue first, as OpenCV holds it.
"""

import torch
import torch.nn.functional as F
from torch import nn

from compiler import compile_graph
from layers import Convolution, floating
from tfjs_graph import read_graph

MOST_PEOPLE = 100
JOINTS = 17


def blue_first(network):
    """Makes a network that was trained on red-first pictures take blue-first ones, by turning its first filters round."""
    first = next(layer for layer in network.modules() if isinstance(layer, Convolution))
    with torch.no_grad():
        first.weight.copy_(first.weight[:, [2, 1, 0]])
    return network


class PersonDetector(nn.Module):
    """MobileNetV3 with CenterNet heads (Zhou and others, 2019, Objects as Points), people only.

    In: [N, H, W, 3], sides multiples of 32; and [1], 8-bit: 1 has it computed in bfloat16, 0 in single precision. Out:
    [N, 100, 5]: score 0 to 1, then left, top, right, bottom in pixels of the input, best first; places without a peak have
    score 0.
    """

    STRIDE = 4
    HEAT, REACH, FEATURES = "tower_0/Sigmoid", "tower_0/mul", "tower_0/CenternetHead/mul"

    def __init__(self, network):
        super().__init__()
        self.network = network

    @staticmethod
    def from_tfjs(json_file):
        heads = [PersonDetector.HEAT, PersonDetector.REACH]
        people_only = {"tower_0/CenternetHead/centernet_cls_output/BiasAdd": 1}
        return PersonDetector(blue_first(compile_graph(read_graph(json_file), heads, people_only)))

    def heads(self, pictures, brief):
        """Heat [N, 1, H/4, W/4] and distances to left, top, right, bottom [N, 4, H/4, W/4] in pixels."""
        return [head.float() for head in self.network(floating(pictures, brief))]

    def forward(self, pictures, brief):
        heat, distances = self.heads(pictures, brief)
        scores, places, centres = strongest_peaks(heat, self.STRIDE)
        reach = distances.flatten(2).transpose(1, 2).gather(1, places.unsqueeze(2).expand(-1, -1, 4))
        return boxes(scores, centres, reach)


class DetectorAtPeaks(nn.Module):
    """The same, with the distances computed at the peaks alone and always in single precision: what is read nowhere else costs
    a fifth of the time, and in bfloat16 would be rounded to a pixel."""

    def __init__(self, detector):
        super().__init__()
        graph = detector.network
        names = [name for name, _ in graph.wiring]
        around, across, factor = graph.layers[-3:]
        if names[-1] != PersonDetector.REACH or graph.wiring[-3][1] != [PersonDetector.FEATURES]:
            raise ValueError("the detector's last layers are not the distances")
        self.factor = float(factor.value)
        self.around, self.across = around, across
        # The layers stay, so that their parameters keep their names.
        graph.wiring = graph.wiring[:-3]
        graph.outputs = [PersonDetector.HEAT, PersonDetector.FEATURES]
        self.network = graph
        step = torch.arange(9)
        self.register_buffer("rows", step // 3 - 1)
        self.register_buffer("columns", step % 3 - 1)

    def forward(self, pictures, brief):
        heat, features = self.network(floating(pictures, brief))
        heat = heat.float()
        scores, places, centres = strongest_peaks(heat, PersonDetector.STRIDE)
        return boxes(scores, centres, self.reach(features, places))

    def reach(self, features, places):
        """A depthwise convolution of 3 x 3 with a border of noughts, then one of 1 x 1, at [N, K] places: [N, K, 4]."""
        height, width = features.shape[2], features.shape[3]
        centre = torch.div(places, width, rounding_mode="floor")
        row = centre.unsqueeze(2) + self.rows
        column = (places - centre * width).unsqueeze(2) + self.columns
        inside = (row >= 0) & (row < height) & (column >= 0) & (column < width)
        near = torch.where(inside, row * width + column, torch.zeros_like(row)).flatten(1)
        cells = features.permute(0, 2, 3, 1).flatten(1, 2)
        channels = features.shape[1]
        seen = cells.gather(1, near.unsqueeze(2).expand(-1, -1, channels)).float().unflatten(1, (MOST_PEOPLE, 9))
        seen = seen * inside.unsqueeze(3).float()
        summed = (seen * self.around.weight.flatten(1).transpose(0, 1)).sum(2) + self.around.bias
        return (summed.matmul(self.across.weight.flatten(1).transpose(0, 1)) + self.across.bias) * self.factor


def strongest_peaks(heat, stride):
    """Scores [N, 100], cells [N, 100] and centres [N, 100, 2] in pixels of the strongest local maxima."""
    peaks = heat * (F.max_pool2d(heat, 3, 1, 1) == heat)
    scores, places = peaks.flatten(1).topk(MOST_PEOPLE)
    width = heat.shape[3]
    y = torch.div(places, width, rounding_mode="floor")
    return scores, places, torch.stack([places - y * width, y], 2).to(torch.float32) * stride


def boxes(scores, centres, reach):
    return torch.cat([scores.unsqueeze(2), centres - reach[:, :, :2], centres + reach[:, :, 2:]], 2)


class PoseEstimator(nn.Module):
    """MoveNet, single person (model card, 2021): the joints of the person nearest the picture's centre.

    In: [N, S, S, 3]; and [1], 8-bit: 1 has it computed in bfloat16, 0 in single precision. Out: [N, 17, 3]: y, x as shares of
    the side, score 0 to 1; joints in COCO's order.
    """

    PREFIX = "StatefulPartitionedCall/"

    def __init__(self, network, constants):
        super().__init__()
        self.network = network
        self.register_buffer("centre_weight", constants["centre_weight"])
        self.register_buffer("rows", constants["rows"])
        self.register_buffer("columns", constants["columns"])
        self.register_buffer("scale", constants["scale"])
        self.nearness = float(constants["nearness"])

    @staticmethod
    def from_tfjs(json_file):
        graph = read_graph(json_file)
        prefix = PoseEstimator.PREFIX
        heads = ["Sigmoid_1", "Sigmoid", "kpt_regress_0/conv2d_6/BiasAdd", "kpt_offset_0/conv2d_7/BiasAdd"]
        network = blue_first(compile_graph(graph, [prefix + head for head in heads]))

        def constant(name):
            return torch.from_numpy(graph.constants[name]).float()

        side = graph.constants[prefix + "strided_slice_3"].shape[0]
        constants = {
            "centre_weight": constant("ConstantFolding/" + prefix + "truediv_2_recip").reshape(1, side * side),
            "rows": constant(prefix + "strided_slice_3").reshape(1, 1, side * side),
            "columns": constant(prefix + "strided_slice_4").reshape(1, 1, side * side),
            "scale": constant(prefix + "Reshape_13").reshape(1, 1, 2),
            "nearness": constant(prefix + "add_5/y"),
        }
        return PoseEstimator(network, constants)

    def heads(self, pictures, brief):
        """Centre heat, joint heat, joints as seen from the centre, offsets: NCHW at a quarter of the size."""
        return self.network(floating(pictures, brief))

    def forward(self, pictures, brief):
        centre, heat, regressed, offsets = (head.float() for head in self.heads(pictures, brief))
        side = heat.shape[3]
        best = (centre.flatten(1) * self.centre_weight).argmax(1)
        guess = regressed.flatten(2).gather(2, best.view(-1, 1, 1).expand(-1, 2 * JOINTS, 1)).view(-1, JOINTS, 2)
        best_row = torch.div(best, side, rounding_mode="floor")
        row = (best_row.view(-1, 1) + guess[:, :, 0]).unsqueeze(2)
        column = ((best - best_row * side).view(-1, 1) + guess[:, :, 1]).unsqueeze(2)
        distance = ((self.rows - row).square() + (self.columns - column).square()).sqrt() + self.nearness
        flat = heat.flatten(2)
        place = (flat / distance).argmax(2)
        score = flat.gather(2, place.unsqueeze(2))
        offset = offsets.flatten(2).view(-1, JOINTS, 2, side * side)
        offset = offset.gather(3, place.view(-1, JOINTS, 1, 1).expand(-1, -1, 2, 1)).squeeze(3)
        cell_row = torch.div(place, side, rounding_mode="floor")
        cell = torch.stack([cell_row, place - cell_row * side], 2)
        return torch.cat([(cell + offset) * self.scale, score], 2)
