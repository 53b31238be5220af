"""Photographs and rendered film with labelled balls.

Photographs: a folder with labels.csv (file, class, cx, cy, w, h as fractions of the picture) beside the pictures; the two first
parts of a file's name are its session. Rendered film: triples.json and strips of three frames one above the other, as
floorgauge.sampleclips.training.TrainingPictures writes them."""

import csv
import json
import math
from pathlib import Path

import cv2
import numpy as np
import torch
import torch.nn.functional as F

from drawn_balls import BALL, HEIGHT, IGNORED, WIDTH

LEAST_CROP_RADIUS = 7
ROUND = (0.85, 1.18)  # width over height of a box whose ball is whole
LEAST_VISIBLE = 0.3


def labelled_photographs(folder):
    """Each photograph with a ball: file, session, and balls (column, row, radius) in its pixels."""
    folder = Path(folder)
    by_file = {}
    with open(folder / "labels.csv", encoding="utf-8") as rows:
        for row in csv.DictReader(rows):
            if row["class"] == "ball":
                by_file.setdefault(row["file"], []).append([float(row[c]) for c in ("cx", "cy", "w", "h")])
    return [(folder / name, "_".join(name.split("_")[:2]), by_file[name]) for name in sorted(by_file)]


def split_sessions(rows):
    """Every tenth session is kept out."""
    kept_out = set(sorted({r[1] for r in rows})[::10])
    return [r for r in rows if r[1] not in kept_out], [r for r in rows if r[1] in kept_out]


def crops(rows):
    """Close crops of whole balls, for pasting."""
    out = []
    for file, _, balls in rows:
        picture = cv2.imread(str(file))
        height, width = picture.shape[:2]
        for cx, cy, w, h in balls:
            radius = max(w * width, h * height) / 2
            x, y = cx * width, cy * height
            inside = x > radius and y > radius and x + radius < width and y + radius < height
            if inside and radius >= LEAST_CROP_RADIUS and ROUND[0] < w * width / (h * height) < ROUND[1]:
                out.append(picture[round(y - radius) : round(y + radius), round(x - radius) : round(x + radius)])
    return out


def still_triples(rows):
    """The part of each photograph around its first ball at the network's shape, as three equal frames."""
    out = []
    for file, _, balls in rows:
        picture = cv2.imread(str(file))
        scale = WIDTH / picture.shape[1]
        picture = cv2.resize(picture, (WIDTH, round(picture.shape[0] * scale)), interpolation=cv2.INTER_AREA)
        height, width = picture.shape[:2]
        top = int(min(max(0, balls[0][1] * height - HEIGHT / 2), height - HEIGHT))
        frame = picture[top : top + HEIGHT].transpose(2, 0, 1)
        placed = [(cx * width - 0.5, cy * height - 0.5 - top, (w * width + h * height) / 4, BALL) for cx, cy, w, h in balls]
        out.append((np.concatenate([frame] * 3), [b for b in placed if 0 < b[1] < HEIGHT]))
    return out


def rendered_triples(folders):
    """Strips of every folder, with balls; those hidden for the most part are asked for neither way. Each with its scene's name."""
    out = []
    for folder in sorted(Path(f) for f in folders):
        for row in json.loads((folder / "triples.json").read_text(encoding="utf-8")):
            strip = cv2.imread(str(folder / row["file"]))
            frames = [strip[k * HEIGHT : (k + 1) * HEIGHT, :WIDTH].transpose(2, 0, 1) for k in range(3)]
            balls = [(x, y, r, BALL if seen >= LEAST_VISIBLE else IGNORED) for x, y, r, seen in row["balls"]]
            out.append((np.concatenate(frames), balls, row["clip"]))
    return out


def split_clips(rows):
    """Every eighth scene is kept out."""
    kept_out = set(sorted({r[2] for r in rows})[::8])
    return [r for r in rows if r[2] not in kept_out], [r for r in rows if r[2] in kept_out]


class Triples:
    """Labelled triples on the device: x [N, 9, H, W] bytes, balls [N, most, 4] (column, row, radius, kind)."""

    def __init__(self, rows, device, seed):
        self.x = torch.from_numpy(np.stack([r[0] for r in rows])).to(device)
        self.balls = torch.zeros(len(rows), max(1, max(len(r[1]) for r in rows)), 4)
        for i, row in enumerate(rows):
            for j, ball in enumerate(row[1]):
                self.balls[i, j] = torch.tensor(ball)
        self.balls = self.balls.to(device)
        self.device = device
        self.generator = torch.Generator(device=device)
        self.generator.manual_seed(seed)

    def __len__(self):
        return len(self.x)

    def batch(self, n):
        """Random triples, mirrored half the time and zoomed about a random point."""
        def random(low, high):
            return torch.rand(n, 1, generator=self.generator, device=self.device) * (high - low) + low

        index = torch.randint(len(self.x), (n,), generator=self.generator, device=self.device)
        x, balls = self.x[index].float(), self.balls[index].clone()
        flip = random(0, 1) < 0.5
        x = torch.where(flip.view(n, 1, 1, 1), x.flip(3), x)
        balls[:, :, 0] = torch.where(flip, WIDTH - 1 - balls[:, :, 0], balls[:, :, 0])
        zoom, px, py = torch.exp(random(-0.35, 0.6)), random(0, WIDTH), random(0, HEIGHT)
        columns = torch.arange(WIDTH, device=self.device).float()
        rows = torch.arange(HEIGHT, device=self.device).float()
        gx = (px + (columns - px) / zoom).unsqueeze(1).expand(n, HEIGHT, WIDTH)
        gy = (py + (rows - py) / zoom).unsqueeze(2).expand(n, HEIGHT, WIDTH)
        x = F.grid_sample(x, torch.stack([(gx * 2 + 1) / WIDTH - 1, (gy * 2 + 1) / HEIGHT - 1], 3), align_corners=False)
        balls[:, :, 0] = px + (balls[:, :, 0] - px) * zoom
        balls[:, :, 1] = py + (balls[:, :, 1] - py) * zoom
        balls[:, :, 2] *= zoom
        inside = (balls[:, :, 0] > 0) & (balls[:, :, 0] < WIDTH - 1) & (balls[:, :, 1] > 0) & (balls[:, :, 1] < HEIGHT - 1)
        balls[:, :, 3] *= inside.float()
        return x, balls
