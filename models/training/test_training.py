#!/usr/bin/env python3
"""python3 models/training/test_training.py: boxes stay on what they label, targets and losses have their known values, scores
are counted right. Needs what the training needs; runs on a CPU."""

import sys
import unittest
from pathlib import Path

import numpy as np
import torch

sys.path.insert(0, str(Path(__file__).resolve().parent))

from detection import STRIDE, average_precision, loss, targets  # noqa: E402
from pictures_with_people import IGNORED, PERSON, SIDE, Bank, combine, pick, split, true_crowd  # noqa: E402


def drawn(left, top, right, bottom):
    pixels = np.full((SIDE, SIDE, 3), 40, np.uint8)
    pixels[top:bottom, left:right] = 255
    return pixels, [[left, top, right, bottom]], [], (SIDE, SIDE)


class CropsTest(unittest.TestCase):
    def test_boxes_follow_the_patch_they_label(self):
        bank = Bank([drawn(150, 100, 230, 260)], "cpu")
        generator = torch.Generator().manual_seed(7)
        pictures, _, boxes, kind = pick(bank, torch.zeros(12, dtype=torch.long), generator, "cpu")
        for picture, box, k in zip(pictures, boxes[:, 0], kind[:, 0]):
            self.assertEqual(int(k), PERSON)
            rows, columns = (picture[0] > 147).nonzero(as_tuple=True)
            if len(rows) == 0:
                continue
            seen = torch.tensor([columns.min(), rows.min(), columns.max() + 1, rows.max() + 1]).float()
            torch.testing.assert_close(box.clamp(0, SIDE), seen, atol=3.0, rtol=0)

    def test_what_an_upper_layer_hides_is_not_asked_for(self):
        shown = torch.ones(1, 1, SIDE, SIDE, dtype=torch.bool)
        box = torch.tensor([[[100.0, 100, 200, 300]]])
        layer = (torch.zeros(1, 3, SIDE, SIDE), shown, box, torch.tensor([[PERSON]]))
        _, _, kind = combine([layer, layer], torch.Generator().manual_seed(1), "cpu")
        self.assertEqual(kind.tolist()[0][0], PERSON)
        self.assertEqual(kind.tolist()[0][1], 0)

    def test_every_tenth_is_kept_out(self):
        kept, out = split(list(range(25)))
        self.assertEqual(out, [0, 10, 20])
        self.assertEqual(len(kept), 22)

    def test_a_wide_region_round_several_people_is_a_crowd(self):
        people = [[10 + 30 * k, 20, 20, 60] for k in range(5)]
        self.assertTrue(true_crowd([0, 10, 170, 80], people + [[0, 10, 170, 80]]))
        self.assertFalse(true_crowd(people[0], people))


class TargetsTest(unittest.TestCase):
    BOX = torch.tensor([[[101.0, 60, 161, 220]]])

    def test_nobody_gives_an_empty_heat_map(self):
        heat, _, weight, counted = targets(torch.zeros(1, 1, 4), torch.zeros(1, 1, dtype=torch.long))
        self.assertEqual((heat.max().item(), weight.max().item(), counted.min().item()), (0, 0, 1))

    def test_ignored_people_do_not_count(self):
        _, _, _, counted = targets(self.BOX, torch.tensor([[IGNORED]]))
        self.assertEqual(counted[0, 35, 32].item(), 0)
        self.assertEqual(counted[0, 100, 100].item(), 1)

    def test_the_peak_lies_at_the_centre_and_teaches_the_edges(self):
        heat, edges, _, _ = targets(self.BOX, torch.tensor([[PERSON]]))
        row, column = divmod(int(heat[0].argmax()), SIDE // STRIDE)
        self.assertEqual((row, column), (35, 32))
        self.assertEqual(edges[0, :, row, column].tolist(), self.BOX[0, 0].tolist())

    def test_perfect_distances_cost_nothing(self):
        heat, edges, _, _ = targets(self.BOX, torch.tensor([[PERSON]]))
        axis = torch.arange(SIDE // STRIDE).float() * STRIDE
        x, y = axis.view(1, 1, -1), axis.view(1, -1, 1)
        reach = torch.stack([x - edges[:, 0], y - edges[:, 1], edges[:, 2] - x, edges[:, 3] - y], 1)
        _, box = loss(torch.cat([heat.unsqueeze(1), reach], 1), self.BOX, torch.tensor([[PERSON]]))
        self.assertLess(box.item(), 1e-5)


class ScoreTest(unittest.TestCase):
    def test_one_found_one_missed_one_false(self):
        """Two people, best box right, next false: precision 1 up to recall 1/2, so AP = 1/2."""
        item = (np.zeros((SIDE, SIDE, 3), np.uint8), [[40, 40, 80, 120], [300, 300, 340, 380]], [], (SIDE, SIDE))

        def network(x):
            out = torch.zeros(1, 5, SIDE // STRIDE, SIDE // STRIDE)
            for score, column, row in ((0.9, 15, 20), (0.5, 60, 20)):
                out[0, :, row, column] = torch.tensor([score, 20, 40, 20, 40])
            return out

        precision, recall = average_precision(network, [item], "cpu")
        self.assertAlmostEqual(precision, 0.5)
        self.assertAlmostEqual(recall, 0.5)


if __name__ == "__main__":
    unittest.main()
