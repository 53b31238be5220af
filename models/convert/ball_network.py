"""The ball detector: three frames of film in, places of balls in the middle one out.

A small fully convolutional network of inverted residuals (Sandler and others, 2018, MobileNetV2) with two upward steps, and the
peaks of a heat map as answers (Zhou and others, 2019, Objects as Points). Three frames tell a ball in flight from a round
thing that hangs on a wall.
"""

import torch
import torch.nn.functional as F
import torch.nn.utils.fusion
from torch import nn

from layers import floating

STRIDE = 4
FRAMES = 3
MOST_BALLS = 8
# Pictures lie in 0 to 255; these bring most of a gym's pixels near zero with a spread of one.
MIDDLE, SPREAD = 110.0, 64.0
FIRST_LOGIT = -4.6  # a ball in one cell of a hundred, before anything is learnt


def convolution(inputs, outputs, kernel=3, stride=1, groups=1, active=True):
    layers = [nn.Conv2d(inputs, outputs, kernel, stride, kernel // 2, groups=groups, bias=False), nn.BatchNorm2d(outputs)]
    return nn.Sequential(*layers, nn.ReLU(inplace=True)) if active else nn.Sequential(*layers)


class Block(nn.Module):
    """Widen, look around each channel, narrow; added to the input where shapes agree."""

    def __init__(self, inputs, outputs, stride=1, kernel=3, widen=3):
        super().__init__()
        wide = inputs * widen
        self.steps = nn.Sequential(
            convolution(inputs, wide, 1),
            convolution(wide, wide, kernel, stride, wide),
            convolution(wide, outputs, 1, active=False),
        )
        self.same = stride == 1 and inputs == outputs

    def forward(self, x):
        y = self.steps(x)
        return x + y if self.same else y


class BallHeads(nn.Module):
    """[N, 9, H, W], 0 to 255, blue first, earliest frame first, sides multiples of 16, to [N, 4, H/4, W/4]: logit, offsets to
    the right and down in cells, logarithm of the radius in pixels."""

    def __init__(self):
        super().__init__()
        self.stem = convolution(3 * FRAMES, 24, 5, 2)
        self.quarter = nn.Sequential(Block(24, 32, 2), Block(32, 32))
        self.eighth = nn.Sequential(Block(32, 48, 2, 5), Block(48, 48), Block(48, 48, 1, 5))
        self.sixteenth = nn.Sequential(Block(48, 96, 2, 5), Block(96, 96, 1, 5), Block(96, 96, 1, 5), Block(96, 96))
        self.from_sixteenth, self.from_eighth = convolution(96, 48, 1), convolution(48, 48, 1)
        self.joined_eighth = Block(48, 48)
        self.up_eighth, self.from_quarter = convolution(48, 48, 1), convolution(32, 48, 1)
        self.joined_quarter = nn.Sequential(Block(48, 48), Block(48, 48))
        self.head = nn.Sequential(
            convolution(48, 48, 3, groups=48), nn.Conv2d(48, 48, 1), nn.ReLU(inplace=True), nn.Conv2d(48, 4, 1)
        )
        self.head[-1].bias.data[0] = FIRST_LOGIT

    def forward(self, x):
        quarter = self.quarter(self.stem((x - MIDDLE) / SPREAD))
        eighth = self.eighth(quarter)
        sixteenth = self.sixteenth(eighth)
        y = self.joined_eighth(self.from_eighth(eighth) + larger(self.from_sixteenth(sixteenth)))
        return self.head(self.joined_quarter(self.from_quarter(quarter) + larger(self.up_eighth(y))))


def larger(x):
    return F.interpolate(x, scale_factor=2.0, mode="nearest")


class BallDetector(nn.Module):
    """In: [3 N, H, W, 3], 8-bit, blue first, the three frames of each moment one after the other, earliest first, sides multiples
    of 16; and [1], 8-bit: 1 has it computed in bfloat16, 0 in single precision. Out: [N, 8, 4]: score 0 to 1, then column and row of the centre (the first pixel's centre is 0, 0) and radius in
    pixels, best first; places without a peak have score 0."""

    def __init__(self, network):
        super().__init__()
        self.network = network

    def heads(self, frames, brief):
        numbers = floating(frames, brief)
        stacked = numbers.reshape(-1, 3 * FRAMES, frames.shape[1], frames.shape[2])
        return self.network(stacked.contiguous(memory_format=torch.channels_last)).float()

    def forward(self, frames, brief):
        return best_balls(self.heads(frames, brief))


def best_balls(heads):
    heat = torch.sigmoid(heads[:, :1])
    peaks = heat * (F.max_pool2d(heat, 5, 1, 2) == heat)
    scores, places = peaks.flatten(1).topk(MOST_BALLS)
    width = heat.shape[3]
    row = torch.div(places, width, rounding_mode="floor")
    column = places - row * width
    there = heads.flatten(2).gather(2, places.unsqueeze(1).expand(-1, 4, -1))
    x = (column + there[:, 1]) * STRIDE
    y = (row + there[:, 2]) * STRIDE
    return torch.stack([scores, x, y, torch.exp(there[:, 3])], 2)


def folded(module):
    """Writes each batch normalisation into the convolution before it: the same answers in fewer steps."""
    for child in module.children():
        folded(child)
    if isinstance(module, nn.Sequential) and len(module) > 1 and isinstance(module[1], nn.BatchNorm2d):
        module[0] = torch.nn.utils.fusion.fuse_conv_bn_eval(module[0], module[1])
        module[1] = nn.Identity()
    return module
