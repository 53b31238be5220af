"""Pictures with boxes, and random crops of them laid over one another.

A folder holds images/*.jpg and annotations.json in COCO's layout: bbox (left, top, width, height), iscrowd, and ignore for
people too hidden to ask for. Pictures are blue first, as the program's are.
"""

import json
import math
from pathlib import Path

import cv2
import numpy as np
import torch
import torch.nn.functional as F

SIDE = 512
MOST_BOXES = 40
LAYERS = 4
SMALLEST, LARGEST = 18, 420  # heights that people are drawn to, pixels
PERSON, IGNORED = 1, 2


def true_crowd(box, others):
    """COCO's crowd regions are wide and hold several people; single people flagged for the pose task are neither."""
    x, y, w, h = box
    inside = sum(1 for (a, b, c, d) in others if a + c / 2 > x and a + c / 2 < x + w and b + d / 2 > y and b + d / 2 < y + h)
    return w > 1.5 * h and inside >= 4


def load(folder):
    """Each picture as bytes [512, 512, 3], padded at the right and below, its boxes and ignored boxes (left, top, right,
    bottom), and its own (width, height)."""
    folder = Path(folder)
    document = json.loads((folder / "annotations.json").read_text(encoding="utf-8"))
    by_image = {}
    for annotation in document["annotations"]:
        by_image.setdefault(annotation["image_id"], []).append(annotation)
    return [
        _item(folder / "images" / image["file_name"], by_image.get(image["id"], []))
        for image in sorted(document["images"], key=lambda i: i["file_name"])
    ]


def _item(file, annotations):
    picture = cv2.imread(str(file))
    height, width = picture.shape[:2]
    scale = min(1.0, SIDE / max(width, height))
    if scale < 1:
        width, height = round(width * scale), round(height * scale)
        picture = cv2.resize(picture, (width, height), interpolation=cv2.INTER_AREA)
    pixels = np.zeros((SIDE, SIDE, 3), np.uint8)
    pixels[:height, :width] = picture
    everyone = [a["bbox"] for a in annotations]
    boxes, ignored = [], []
    for annotation in annotations:
        left, top, w, h = annotation["bbox"]
        corners = [left * scale, top * scale, (left + w) * scale, (top + h) * scale]
        crowd = annotation.get("iscrowd", 0) and true_crowd(annotation["bbox"], everyone)
        (ignored if crowd or annotation.get("ignore") else boxes).append(corners)
    return pixels, boxes, ignored, (width, height)


def split(items):
    """Nine tenths to train on, every tenth kept out."""
    return [item for k, item in enumerate(items) if k % 10], items[::10]


class Bank:
    """A set of pictures on the device with padded box tables."""

    def __init__(self, items, device):
        self.pixels = torch.from_numpy(np.stack([i[0] for i in items])).permute(0, 3, 1, 2).contiguous().to(device)
        n = len(items)
        self.boxes = torch.zeros(n, MOST_BOXES, 4)
        self.kind = torch.zeros(n, MOST_BOXES, dtype=torch.long)  # 0 none, 1 person, 2 ignored
        self.size = torch.tensor([i[3] for i in items], dtype=torch.float32)
        for k, (_, boxes, ignored, _) in enumerate(items):
            rows = [(b, 1) for b in boxes] + [(b, 2) for b in ignored]
            for j, (b, kind) in enumerate(rows[:MOST_BOXES]):
                self.boxes[k, j] = torch.tensor(b)
                self.kind[k, j] = kind
        self.boxes, self.kind, self.size = self.boxes.to(device), self.kind.to(device), self.size.to(device)

    def __len__(self):
        return self.pixels.shape[0]


def pick(bank, index, g, device):
    """Random affine crops: a person of the picture gets a height drawn log-uniformly from 18 to 420 pixels."""
    n = index.shape[0]

    def rnd(lo=0.0, hi=1.0, shape=(n,)):
        return torch.rand(shape, generator=g, device=device) * (hi - lo) + lo

    boxes, kind = bank.boxes[index], bank.kind[index]
    person = (kind == PERSON).float()
    has = person.sum(1) > 0
    weights = person + (~has).float().unsqueeze(1) * 1.0
    ref = torch.multinomial(weights, 1, generator=g).squeeze(1)
    rb = boxes[torch.arange(n, device=device), ref]
    height = (rb[:, 3] - rb[:, 1]).clamp(min=8)
    target = torch.exp(rnd(math.log(18), math.log(420)))
    scale = torch.where(has, target / height, rnd(0.5, 1.5)).clamp(0.12, 3.0)
    aspect = torch.exp(rnd(-0.15, 0.15))
    sx, sy = scale * aspect.sqrt(), scale / aspect.sqrt()
    cx = torch.where(has, (rb[:, 0] + rb[:, 2]) / 2, bank.size[index][:, 0] / 2)
    cy = torch.where(has, (rb[:, 1] + rb[:, 3]) / 2, bank.size[index][:, 1] / 2)
    px, py = rnd(0.1 * SIDE, 0.9 * SIDE), rnd(0.1 * SIDE, 0.9 * SIDE)
    flip = torch.where(rnd() < 0.5, -1.0, 1.0)
    # crop (u, v) shows the picture at x = cx + flip (u - px) / sx, y = cy + (v - py) / sy
    grid = torch.arange(SIDE, device=device, dtype=torch.float32)
    x = cx.view(n, 1) + flip.view(n, 1) * (grid.view(1, -1) - px.view(n, 1)) / sx.view(n, 1)
    y = cy.view(n, 1) + (grid.view(1, -1) - py.view(n, 1)) / sy.view(n, 1)
    sampling = torch.stack(
        [
            (x.unsqueeze(1).expand(n, SIDE, SIDE) * 2 + 1) / SIDE - 1,
            (y.unsqueeze(2).expand(n, SIDE, SIDE) * 2 + 1) / SIDE - 1,
        ],
        3,
    )
    source = bank.pixels[index].float()
    # Averaging first keeps a strong reduction from aliasing.
    half = F.avg_pool2d(source, 2)
    quarter = F.avg_pool2d(half, 2)
    level = torch.where(scale > 0.7, 0, torch.where(scale > 0.35, 1, 2))
    out = torch.zeros_like(source)
    for k, pyramid in enumerate((source, half, quarter)):
        sampled = F.grid_sample(pyramid, sampling, mode="bilinear", padding_mode="zeros", align_corners=False)
        out = torch.where((level == k).view(n, 1, 1, 1), sampled, out)
    inside = (
        (x >= 0) & (x <= bank.size[index][:, :1] - 1)
    ).unsqueeze(1) & ((y >= 0) & (y <= bank.size[index][:, 1:] - 1)).unsqueeze(2)
    bx = px.view(n, 1, 1) + flip.view(n, 1, 1) * (boxes[:, :, 0::2] - cx.view(n, 1, 1)) * sx.view(n, 1, 1)
    by = py.view(n, 1, 1) + (boxes[:, :, 1::2] - cy.view(n, 1, 1)) * sy.view(n, 1, 1)
    moved = torch.stack([bx.min(2).values, by[:, :, 0], bx.max(2).values, by[:, :, 1]], 2)
    return out, inside.unsqueeze(1), moved, kind


def combine(layers, g, device):
    """Lays crops over one another: each fills what the ones above leave empty, so that scenes of many sizes mix."""
    out, inside, boxes, kinds = layers[0]
    n = out.shape[0]
    every_box, every_kind = [boxes], [kinds]
    for pixels, shows, more, kind in layers[1:]:
        use = (torch.rand(n, generator=g, device=device) < 0.75).view(n, 1, 1, 1)
        fill = use & ~inside & shows
        out = torch.where(fill, pixels, out)
        # A box of a lower layer counts by the share of it that shows.
        share = box_mean(integral(fill.float()), more)
        kind = torch.where((kind == PERSON) & (share < 0.75), torch.where(share < 0.1, 0, 2), kind)
        kind = torch.where(share < 0.05, 0, kind)
        every_box.append(more)
        every_kind.append(torch.where(use.view(n, 1), kind, 0))
        inside = inside | fill
    gray = torch.rand(n, 3, 1, 1, generator=g, device=device) * 255
    out = torch.where(~inside, gray, out)
    return out, torch.cat(every_box, 1), torch.cat(every_kind, 1)


def integral(mask):
    return F.pad(mask.squeeze(1).cumsum(1).cumsum(2), (1, 0, 1, 0))


def box_mean(table, boxes):
    n = boxes.shape[0]
    b = boxes.round().long().clamp(0, SIDE)
    rows = torch.arange(n, device=boxes.device).view(n, 1)
    total = (
        table[rows, b[:, :, 3], b[:, :, 2]]
        - table[rows, b[:, :, 1], b[:, :, 2]]
        - table[rows, b[:, :, 3], b[:, :, 0]]
        + table[rows, b[:, :, 1], b[:, :, 0]]
    )
    full = ((boxes[:, :, 2] - boxes[:, :, 0]) * (boxes[:, :, 3] - boxes[:, :, 1])).clamp(min=1)
    return total / full


def photometric(x, g, device):
    """Light, colour, blur, low resolution, noise, palettes with ordered dither, and bars drawn over the picture."""
    n = x.shape[0]

    def rnd(lo, hi):
        return torch.rand(n, 1, 1, 1, generator=g, device=device) * (hi - lo) + lo

    def some(p):
        return torch.rand(n, 1, 1, 1, generator=g, device=device) < p

    mean = x.mean((2, 3), keepdim=True)
    x = (x - mean) * rnd(0.55, 1.35) + mean * rnd(0.5, 1.4)
    gray = (x * torch.tensor([0.114, 0.587, 0.299], device=device).view(1, 3, 1, 1)).sum(1, keepdim=True)
    x = gray + (x - gray) * torch.where(some(0.08), torch.zeros_like(mean[:, :1]), rnd(0.3, 1.5))
    x = x * (1 + torch.randn(n, 3, 1, 1, generator=g, device=device) * 0.08)
    low = F.interpolate(F.interpolate(x, scale_factor=0.5, mode="area"), size=(SIDE, SIDE), mode="bilinear", align_corners=False)
    x = torch.where(some(0.35), low, x)
    blur = F.avg_pool2d(F.pad(x, (1, 1, 1, 1), mode="replicate"), 3, 1)
    x = torch.where(some(0.2), blur, x)
    smear = F.avg_pool2d(F.pad(x, (3, 3, 0, 0), mode="replicate"), (1, 7), 1)
    x = torch.where(some(0.08), smear, x)
    x = x + torch.randn(x.shape, generator=g, device=device) * torch.where(some(0.5), rnd(0, 12), torch.zeros(1, device=device))
    bayer = torch.tensor([[0, 8, 2, 10], [12, 4, 14, 6], [3, 11, 1, 9], [15, 7, 13, 5]], device=device).float() / 16 - 0.5
    step = rnd(16, 48)
    dithered = ((x + bayer.repeat(SIDE // 4, SIDE // 4) * step) / step).round() * step
    x = torch.where(some(0.15), dithered, x)
    return x.clamp(0, 255)
