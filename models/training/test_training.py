#!/usr/bin/env python3
"""python3 models/training/test_training.py: labels stay on what they label, losses and scores have their known values, and
two steps of training on drawn figures run on a CPU. Needs what the training needs."""

import json
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

import cv2
import numpy as np
import torch

HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE)]

from pictures import Augmentation, is_held_out  # noqa: E402
from scores import AveragePrecision, overlap  # noqa: E402
from targets import box_loss, draw_targets, heat_loss  # noqa: E402


class PicturesTest(unittest.TestCase):
    def test_boxes_follow_the_patch_they_label(self):
        for seed in range(30):
            with self.subTest(seed=seed):
                picture = np.zeros((300, 400, 3), np.uint8)
                picture[100:180, 150:190] = 255
                augment = Augmentation(320, 256, np.random.default_rng(seed))
                augment._recoloured = lambda moved: moved
                moved, boxes, _ = augment(picture, np.array([[150, 100, 40, 80]], np.float32), np.array([False]))
                lit = cv2.boundingRect((moved[:, :, 0] > 127).astype(np.uint8))
                if len(boxes):
                    np.testing.assert_allclose(boxes[0], lit, atol=1.6)

    def test_a_tenth_is_held_out_by_name(self):
        names = [f"{i:012d}.jpg" for i in range(5000)]
        self.assertAlmostEqual(np.mean([is_held_out(name) for name in names]), 0.1, delta=0.02)


class TargetsTest(unittest.TestCase):
    def test_nobody_gives_an_empty_heat_map(self):
        heat, counts, _, weight = draw_targets(np.zeros((0, 4)), np.zeros(0, bool), 64, 32)
        self.assertEqual((heat.shape, heat.max(), counts.min(), weight.max()), ((8, 16), 0, 1, 0))

    def test_ignored_regions_do_not_count(self):
        _, counts, _, _ = draw_targets(np.array([[8.0, 8, 16, 16]]), np.array([True]), 64, 64)
        self.assertEqual(counts[4, 4], 0)
        self.assertEqual(counts[15, 15], 1)

    def test_the_targets_decode_to_the_box(self):
        heat, _, reach, _ = draw_targets(np.array([[10.0, 6, 20, 44]]), np.array([False]), 64, 64)
        row, column = np.unravel_index(heat.argmax(), heat.shape)
        left, top, right, bottom = reach[:, row, column]
        np.testing.assert_allclose([column * 4 - left, row * 4 - top, left + right, top + bottom], [10, 6, 20, 44])

    def test_perfect_answers_cost_nothing(self):
        heat, counts, reach, weight = (torch.from_numpy(t)[None] for t in draw_targets(np.array([[10.0, 6, 20, 44]]), np.array([False]), 64, 64))
        self.assertLess(float(box_loss(reach, reach, weight)), 1e-5)
        centres_only = (heat == 1).float()
        self.assertLess(float(heat_loss(centres_only, heat, counts)), 1e-3)


class ScoresTest(unittest.TestCase):
    def test_overlap_of_half_shifted_boxes_is_a_third(self):
        self.assertAlmostEqual(float(overlap(np.array([[0, 0, 2, 1.0]]), np.array([[1, 0, 2, 1.0]]))[0, 0]), 1 / 3)

    def test_perfect_detections_score_one(self):
        score = AveragePrecision()
        boxes = np.array([[0, 0, 10, 20], [30, 0, 10, 20]], np.float32)
        score.add(np.concatenate([[[0.9], [0.8]], boxes], 1), boxes, np.zeros(2, bool))
        self.assertEqual(score.result()["average_precision"], 1)

    def test_a_false_box_first_halves_the_precision(self):
        score = AveragePrecision()
        boxes = np.array([[0, 0, 10, 20]], np.float32)
        score.add(np.array([[0.9, 50, 50, 10, 20], [0.8, 0, 0, 10, 20]]), boxes, np.zeros(1, bool))
        self.assertAlmostEqual(score.result()["average_precision"], 0.5)


class TrainingTest(unittest.TestCase):
    def test_two_steps_run_and_leave_parameters(self):
        with tempfile.TemporaryDirectory() as folder:
            folder = Path(folder)
            draw_folder(folder / "figures")
            command = [sys.executable, HERE / "train_detector.py", "--weights", HERE.parent / "person-detector.pt", "--out", folder / "out"]
            command += ["--folder", f"{folder / 'figures'}:1", "--steps", 2, "--batch", 2, "--width", 128, "--height", 96]
            command += ["--check-every", 2, "--check-at-most", 2, "--workers", 1]
            subprocess.run([str(part) for part in command], check=True, stdout=subprocess.DEVNULL)
            parameters = np.load(folder / "out" / "best.npz")
            self.assertTrue(all(np.isfinite(parameters[name]).all() for name in parameters.files))
            self.assertEqual(len(json.loads((folder / "out" / "log.json").read_text())), 2)


def draw_folder(folder):
    import importlib.util

    spec = importlib.util.spec_from_file_location("figures", HERE.parent / "convert" / "pictures.py")
    figures = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(figures)
    (folder / "images").mkdir(parents=True)
    images, annotations = [], []
    for number in range(30):
        box = (20 + number, 10, 30, 75)
        cv2.imwrite(str(folder / "images" / f"{number}.png"), figures.figure_picture(128, 96, [box]))
        images.append({"id": number, "file_name": f"{number}.png"})
        annotations.append({"image_id": number, "bbox": box})
    (folder / "annotations.json").write_text(json.dumps({"images": images, "annotations": annotations}))


if __name__ == "__main__":
    unittest.main()
