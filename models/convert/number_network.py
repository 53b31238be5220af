"""Reads the number on a torso's crop: a small convolutional network whose heads say whether there is a legible number of one or
two digits, and which digits they are."""

import torch
import torch.nn.functional as F
from torch import nn

SIDE = 64
NUMBERS = 100


def convolution(inputs, outputs, stride=1):
    return nn.Sequential(
        nn.Conv2d(inputs, outputs, 3, stride, 1, bias=False), nn.BatchNorm2d(outputs), nn.ReLU(inplace=True)
    )


class NumberHeads(nn.Module):
    """Pictures [N, 3, 64, 64], blue first, 0 to 255, to logits: kind (none, one digit, two), tens, ones."""

    def __init__(self):
        super().__init__()
        self.body = nn.Sequential(
            convolution(3, 24),
            convolution(24, 32, 2),
            convolution(32, 48),
            convolution(48, 64, 2),
            convolution(64, 80),
            convolution(80, 96, 2),
            convolution(96, 96),
            convolution(96, 96),
            nn.Conv2d(96, 24, 1, bias=False),
            nn.BatchNorm2d(24),
            nn.ReLU(inplace=True),
        )
        self.gather = nn.Conv2d(24, 72, SIDE // 8)
        self.heads = nn.Conv2d(72, 3 + 10 + 10, 1)

    def forward(self, x):
        mean = x.mean((1, 2, 3), keepdim=True)
        x = (x - mean) / ((x - mean).pow(2).mean((1, 2, 3), keepdim=True).sqrt() + 8)
        gathered = F.dropout(F.relu(self.gather(self.body(x))), 0.2, self.training)
        logits = self.heads(gathered).flatten(1)
        return logits[:, :3], logits[:, 3:13], logits[:, 13:]


class NumberReader(nn.Module):
    """Crops [N, 64, 64, 3] as bytes to probabilities [N, 101]: of the numbers 0 to 99, then of none that is legible.

    temperature: what the logits are divided by, so that the probabilities are true ones on drawings kept out of training."""

    def __init__(self, heads, temperature):
        super().__init__()
        self.heads = heads
        self.register_buffer("temperature", torch.tensor(float(temperature)))

    def forward(self, pictures):
        kind, tens, ones = self.heads(pictures.permute(0, 3, 1, 2).to(torch.float32))
        kind = torch.softmax(kind / self.temperature, 1)
        tens = torch.softmax(tens / self.temperature, 1)
        ones = torch.softmax(ones / self.temperature, 1)
        two = (tens[:, :, None] * ones[:, None, :] * kind[:, 2, None, None]).flatten(1)
        # A number of two digits does not begin with naught.
        share = two[:, 10:].sum(1, keepdim=True) + 1e-9
        two = two[:, 10:] * (kind[:, 2, None] / share)
        return torch.cat([ones * kind[:, 1, None], two, kind[:, :1]], 1)
