"""Average precision at an intersection over union of 0.5 (Everingham and others, 2010, area under the curve), and recall."""

import numpy as np


def overlap(a, b):
    """Intersection over union of boxes (left, top, width, height), all pairs."""
    left, top = np.maximum(a[:, None, 0], b[None, :, 0]), np.maximum(a[:, None, 1], b[None, :, 1])
    right = np.minimum(a[:, None, 0] + a[:, None, 2], b[None, :, 0] + b[None, :, 2])
    bottom = np.minimum(a[:, None, 1] + a[:, None, 3], b[None, :, 1] + b[None, :, 3])
    common = np.maximum(right - left, 0) * np.maximum(bottom - top, 0)
    return common / ((a[:, 2] * a[:, 3])[:, None] + (b[:, 2] * b[:, 3])[None] - common)


class AveragePrecision:
    """Collects pictures, then scores them."""

    def __init__(self):
        self.found, self.labelled = [], 0

    def add(self, detections, boxes, ignored):
        """detections: rows of score, left, top, width, height, best first."""
        wanted = boxes[~ignored]
        self.labelled += len(wanted)
        taken = set()
        for row in detections:
            box = row[None, 1:]
            candidates = [i for i, o in enumerate(overlap(wanted, box)[:, 0]) if o >= 0.5 and i not in taken] if len(wanted) else []
            if candidates:
                taken.add(max(candidates, key=lambda i: overlap(wanted[i : i + 1], box)[0, 0]))
                self.found.append((row[0], 1))
            elif not self._in_ignored(row[1:], boxes[ignored]):
                self.found.append((row[0], 0))

    @staticmethod
    def _in_ignored(box, regions):
        for left, top, width, height in regions:
            w = min(box[0] + box[2], left + width) - max(box[0], left)
            h = min(box[1] + box[3], top + height) - max(box[1], top)
            if w > 0 and h > 0 and w * h > 0.5 * box[2] * box[3]:
                return True
        return False

    def result(self):
        """Average precision; recall at a precision of 0.8 with the score that gives it."""
        ordered = np.array(sorted(self.found, key=lambda pair: -pair[0])).reshape(-1, 2)
        hits = np.cumsum(ordered[:, 1])
        recall = hits / max(1, self.labelled)
        precision = hits / np.arange(1, len(hits) + 1)
        envelope = np.maximum.accumulate(precision[::-1])[::-1]
        average = float(np.sum(np.diff(np.concatenate([[0], recall])) * envelope))
        good = np.nonzero(precision >= 0.8)[0]
        last = good[-1] if len(good) else None
        return {
            "average_precision": round(average, 4),
            "recall_at_precision_0.8": round(float(recall[last]), 4) if last is not None else 0.0,
            "score_there": round(float(ordered[last, 0]), 4) if last is not None else None,
            "labelled": self.labelled,
        }
