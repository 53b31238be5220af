"""TensorFlow's operations as PyTorch modules on NCHW tensors kept in channels-last memory.

Sizes are assumed even wherever a stride of 2 is met, which holds for pictures whose sides are multiples of 32: TensorFlow's
SAME padding is then a constant of the layer.
"""

from typing import Tuple

import torch
import torch.nn.functional as F
from torch import Tensor, nn


@torch.jit.script
def floating(pictures: Tensor, brief: Tensor) -> Tensor:
    """8-bit pictures NHWC as NCHW numbers: bfloat16 where the flag `brief` is 1, else single precision."""
    channels_first = pictures.permute(0, 3, 1, 2)
    if int(brief) == 1:
        return channels_first.to(torch.bfloat16)
    return channels_first.to(torch.float32)


def same_padding(kernel, stride):
    """TensorFlow's SAME padding (before, after) of an even side."""
    total = max(kernel - stride, 0)
    return total // 2, total - total // 2


class Convolution(nn.Module):
    """A convolution with bias and activation, its weights stored in half precision and used in the input's.

    The source weights are half precision, so single precision loses nothing. `activation` is one of "", "Relu", "Relu6".
    """

    weight: Tensor
    bias: Tensor

    def __init__(self, weight, bias, stride, padding, groups, activation):
        super().__init__()
        self.weight = nn.Parameter(weight.contiguous(memory_format=torch.channels_last))
        self.bias = nn.Parameter(bias)
        self.stride = stride
        self.groups = groups
        self.activation = activation
        (top, bottom), (left, right) = padding
        self.symmetric = top == bottom and left == right
        self.padding = [top, left] if self.symmetric else [0, 0]
        self.border = [left, right, top, bottom]

    def forward(self, x: Tensor) -> Tensor:
        if not self.symmetric:
            x = F.pad(x, self.border)
        weight, bias = self.weight.to(x.dtype), self.bias.to(x.dtype)
        x = F.conv2d(x, weight, bias, [self.stride, self.stride], self.padding, [1, 1], self.groups)
        # In place: a second picture in memory costs more than the operation.
        if self.activation == "Relu":
            return x.relu_()
        if self.activation == "Relu6":
            return x.clamp_(0.0, 6.0)
        return x

    def evened(self):
        """Writes a border that is one wider behind than before into the kernel, as a row and a column of noughts before it:
        the same sums without a padded copy of the picture."""
        left, right, top, bottom = self.border
        if not self.symmetric and (right - left, bottom - top) == (1, 1):
            wider = F.pad(self.weight.detach(), (1, 0, 1, 0))
            self.weight = nn.Parameter(wider.contiguous(memory_format=torch.channels_last))
            self.padding, self.symmetric = [bottom, right], True
        return self

    @torch.jit.export
    def __getstate__(self) -> Tuple[Tensor, Tensor, int, int, str, bool, Tuple[int, int], Tuple[int, int, int, int], bool]:
        return (
            self.weight.half(),
            self.bias.half(),
            self.stride,
            self.groups,
            self.activation,
            self.symmetric,
            (self.padding[0], self.padding[1]),
            (self.border[0], self.border[1], self.border[2], self.border[3]),
            self.training,
        )

    @torch.jit.export
    def __setstate__(
        self,
        state: Tuple[Tensor, Tensor, int, int, str, bool, Tuple[int, int], Tuple[int, int, int, int], bool],
    ):
        self.weight = state[0].float().contiguous(memory_format=torch.channels_last)
        self.bias = state[1].float()
        self.stride = state[2]
        self.groups = state[3]
        self.activation = state[4]
        self.symmetric = state[5]
        self.padding = [state[6][0], state[6][1]]
        self.border = [state[7][0], state[7][1], state[7][2], state[7][3]]
        self.training = state[8]


class Constant(nn.Module):
    """Combines its input with a constant; the operation is "Add", "Sub", "RSub" or "Mul"."""

    def __init__(self, operation, value):
        super().__init__()
        self.operation = operation
        self.register_buffer("value", value)

    def forward(self, x):
        if self.operation == "Add":
            return x + self.value
        if self.operation == "Sub":
            return x - self.value
        if self.operation == "RSub":
            return self.value - x
        return x * self.value


class Pairwise(nn.Module):
    """Adds or multiplies two tensors."""

    def __init__(self, operation):
        super().__init__()
        self.operation = operation

    def forward(self, a, b):
        return a + b if self.operation == "Add" else a * b


class Activation(nn.Module):
    """A function of each value: "Relu", "Relu6" or "Sigmoid"."""

    FUNCTIONS = {"Relu": F.relu, "Relu6": F.relu6, "Sigmoid": torch.sigmoid}

    def __init__(self, operation):
        super().__init__()
        self.function = self.FUNCTIONS[operation]

    def forward(self, x):
        return self.function(x)


class HardSwish(nn.Module):
    """x relu6(x + 3) times a factor, which is a sixth as the source rounded it."""

    def __init__(self, factor):
        super().__init__()
        self.factor = 6 * factor

    def forward(self, x):
        return F.hardswish(x) * self.factor if x.requires_grad else F.hardswish(x).mul_(self.factor)


class SpatialMean(nn.Module):
    """The mean over the picture, kept as one pixel."""

    def forward(self, x):
        return x.mean((2, 3), keepdim=True)


class Channels(nn.Module):
    """Lays tensors' channels one behind the other."""

    def forward(self, *parts):
        return torch.cat(parts, 1)


class DoubleSize(nn.Module):
    """Bilinear enlargement by two, in either of TensorFlow's conventions.

    With half-pixel centres it is PyTorch's own. Without, output i samples input i / 2: repeating the last row and column once
    makes that PyTorch's "aligned corners" on 2 n + 1 samples, of which the last is dropped.
    """

    def __init__(self, half_pixel_centres):
        super().__init__()
        self.half_pixel_centres = half_pixel_centres

    def forward(self, x):
        if self.half_pixel_centres:
            return F.interpolate(x, scale_factor=2.0, mode="bilinear", align_corners=False)
        height, width = x.shape[2] * 2, x.shape[3] * 2
        padded = torch.cat([x, x[:, :, -1:]], 2)
        padded = torch.cat([padded, padded[:, :, :, -1:]], 3)
        larger = F.interpolate(padded, size=(height + 1, width + 1), mode="bilinear", align_corners=True)
        return larger[:, :, :height, :width]


class Same(nn.Module):
    """Passes its input on: casts and reshapings that do not matter to NCHW float tensors."""

    def forward(self, x):
        return x
