"""Labelled pictures for training the person detector: photographs and rendered film, cropped, resized, recoloured.

A folder holds `annotations.json` (COCO's boxes) and `images/`. A label is ignored where `iscrowd` or `ignore` is set. A tenth of
each folder's pictures, chosen by a hash of the file name, is kept out of training.
"""

import hashlib
import json
from pathlib import Path

import cv2
import numpy as np

HELD_OUT_SHARE = 0.1
GREY = 114


class Folder:
    """Pictures of one folder with their boxes (left, top, width, height) and which of these are to be ignored."""

    def __init__(self, path, held_out):
        path = Path(path)
        description = json.loads((path / "annotations.json").read_text())
        labels = {}
        for label in description["annotations"]:
            labels.setdefault(label["image_id"], []).append(label)
        self.entries = []
        for image in description["images"]:
            if is_held_out(image["file_name"]) == held_out:
                own = labels.get(image["id"], [])
                boxes = np.array([label["bbox"] for label in own], np.float32).reshape(-1, 4)
                ignored = np.array([bool(label.get("iscrowd") or label.get("ignore")) for label in own], bool)
                self.entries.append((path / "images" / image["file_name"], boxes, ignored))

    def __len__(self):
        return len(self.entries)

    def read(self, index):
        file, boxes, ignored = self.entries[index]
        picture = cv2.imread(str(file), cv2.IMREAD_COLOR)
        if picture is None:
            raise FileNotFoundError(f"{file}: cannot be read")
        return picture, boxes, ignored


def is_held_out(name):
    """Chosen by the name alone, so that it does not change when pictures are added."""
    return int(hashlib.sha256(name.encode()).hexdigest()[:8], 16) / 2**32 < HELD_OUT_SHARE


class Augmentation:
    """Draws a training picture of a fixed size: scaled so that people are of any usual height, moved, mirrored, recoloured."""

    def __init__(self, width, height, random):
        self.width, self.height, self.random = width, height, random

    def __call__(self, picture, boxes, ignored):
        scale = self._scale(picture, boxes)
        matrix, mirrored = self._placement(picture, scale)
        moved = cv2.warpAffine(
            picture, matrix, (self.width, self.height), flags=cv2.INTER_AREA if scale < 1 else cv2.INTER_LINEAR, borderValue=(GREY,) * 3
        )
        boxes = transformed(boxes, matrix, mirrored)
        boxes, ignored = clipped(boxes, ignored, self.width, self.height)
        return self._recoloured(moved), boxes, ignored

    def _scale(self, picture, boxes):
        """So that a person drawn by lot becomes 25 to 300 pixels tall, evenly in the logarithm."""
        if len(boxes) == 0:
            return float(self.random.uniform(0.6, 1.6)) * self.width / picture.shape[1]
        tall = boxes[self.random.integers(len(boxes)), 3]
        wanted = np.exp(self.random.uniform(np.log(25), np.log(300)))
        return float(np.clip(wanted / max(tall, 8), 0.3, 4))

    def _placement(self, picture, scale):
        height, width = picture.shape[:2]
        spare_x, spare_y = self.width - width * scale, self.height - height * scale
        x = self.random.uniform(min(0, spare_x), max(0, spare_x))
        y = self.random.uniform(min(0, spare_y), max(0, spare_y))
        mirrored = bool(self.random.random() < 0.5)
        # Edges map to edges; warpAffine counts from pixel centres.
        matrix = np.array([[scale, 0, x + (scale - 1) / 2], [0, scale, y + (scale - 1) / 2]], np.float64)
        if mirrored:
            matrix[0] = [-scale, 0, self.width - 1 - matrix[0, 2]]
        return matrix, mirrored

    def _recoloured(self, picture):
        random = self.random
        values = picture.astype(np.float32) * random.uniform(0.6, 1.3) + random.uniform(-25, 25)
        values *= random.uniform(0.9, 1.1, 3).astype(np.float32)
        if random.random() < 0.3:
            values = cv2.GaussianBlur(values, (0, 0), random.uniform(0.4, 1.5))
        if random.random() < 0.3:
            values = values + random.normal(0, random.uniform(2, 10), values.shape).astype(np.float32)
        values = np.clip(values, 0, 255).astype(np.uint8)
        if random.random() < 0.3:
            quality = int(random.integers(25, 80))
            values = cv2.imdecode(cv2.imencode(".jpg", values, [cv2.IMWRITE_JPEG_QUALITY, quality])[1], cv2.IMREAD_COLOR)
        return values


def transformed(boxes, matrix, mirrored):
    """Boxes given by edges, after a scaling, a shift and perhaps a mirroring given for pixel centres."""
    scale = abs(matrix[0, 0])
    left = boxes[:, 0] * matrix[0, 0] + matrix[0, 2] + 0.5 - 0.5 * matrix[0, 0]
    top = boxes[:, 1] * scale + matrix[1, 2] + 0.5 - 0.5 * scale
    size = boxes[:, 2:] * scale
    if mirrored:
        left = left - size[:, 0]
    return np.stack([left, top, size[:, 0], size[:, 1]], 1).astype(np.float32)


def clipped(boxes, ignored, width, height):
    """Boxes cut at the picture's edge; those mostly outside are ignored, those outside left out."""
    left, top = np.maximum(boxes[:, 0], 0), np.maximum(boxes[:, 1], 0)
    right = np.minimum(boxes[:, 0] + boxes[:, 2], width)
    bottom = np.minimum(boxes[:, 1] + boxes[:, 3], height)
    inside = np.maximum(right - left, 0) * np.maximum(bottom - top, 0)
    share = inside / np.maximum(boxes[:, 2] * boxes[:, 3], 1e-6)
    kept = (right - left > 2) & (bottom - top > 4)
    cut = np.stack([left, top, right - left, bottom - top], 1)[kept]
    return cut.astype(np.float32), (ignored | (share < 0.35))[kept]
