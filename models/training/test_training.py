#!/usr/bin/env python3
"""python3 models/training/test_training.py: boxes stay on what they label, targets and losses have their known values, scores
are counted right. Needs what the training needs; runs on a CPU."""

import sys
import unittest
from pathlib import Path

import numpy as np
import torch

sys.path.insert(0, str(Path(__file__).resolve().parent))

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "convert"))

from ball_network import BallHeads, best_balls, folded  # noqa: E402
from ball_pictures import Triples  # noqa: E402
from ball_scores import judged  # noqa: E402
from ball_scores import loss as ball_loss  # noqa: E402
from drawn_numbers import NONE, ONE, TWO, UNCLEAR, DrawnNumbers  # noqa: E402
from number_network import NumberHeads, NumberReader  # noqa: E402
from detection import STRIDE, average_precision, loss, targets  # noqa: E402
from drawn_balls import BALL, HEIGHT, IGNORED, WIDTH, DrawnBalls, reflected, spheres  # noqa: E402
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


class BallsTest(unittest.TestCase):
    def test_labels_follow_the_picture_through_mirror_and_zoom(self):
        x = np.zeros((9, HEIGHT, WIDTH), np.uint8)
        x[:, 138:143, 98:103] = 255
        triples = Triples([(x, [(100, 140, 6, BALL)])], "cpu", 3)
        frames, balls = triples.batch(16)
        for frame, ball in zip(frames[:, 4], balls[:, 0]):
            rows, columns = (frame > 127).nonzero(as_tuple=True)
            if len(rows) > 4 and ball[3] == BALL:
                self.assertAlmostEqual(float(columns.float().mean()), float(ball[0]), delta=1.0)
                self.assertAlmostEqual(float(rows.float().mean()), float(ball[1]), delta=1.0)

    def test_drawn_balls_are_where_they_are_said_to_be(self):
        rng = np.random.default_rng(4)
        grey = [(np.full((512, 512, 3), 90, np.uint8), (512, 512))]
        frames, balls = DrawnBalls(grey, spheres(4, rng), "cpu", 4).batch(6)
        self.assertEqual(tuple(frames.shape), (6, 9, HEIGHT, WIDTH))
        self.assertTrue(((balls[:, :, 3] == BALL) | (balls[:, :, 3] == 0)).all())
        self.assertGreater(int((balls[:, :, 3] == BALL).sum()), 0)

    def test_folding_coordinates_back_keeps_them_inside(self):
        x = reflected(torch.linspace(-900, 1700, 50), torch.tensor(512.0))
        self.assertTrue(((x >= 0) & (x <= 511)).all())
        self.assertEqual(float(reflected(torch.tensor(514.0), torch.tensor(512.0))), 508.0)

    def test_a_network_that_answers_right_loses_less_than_one_that_misses(self):
        balls = torch.tensor([[[100.0, 140, 6, BALL]]])
        right = torch.full((1, 4, HEIGHT // 4, WIDTH // 4), -8.0)
        right[:, 1:] = 0
        wrong = right.clone()
        right[0, 0, 35, 25], right[0, 3, 35, 25] = 8, float(np.log(6))
        wrong[0, 0, 10, 25] = 8
        doubtful = torch.tensor([False])
        self.assertLess(sum(ball_loss(right, balls, doubtful)), 0.02)
        self.assertGreater(sum(ball_loss(wrong, balls, doubtful)), 5)

    def test_answers_at_hidden_balls_count_neither_way(self):
        truth = [[100.0, 140, 6, BALL], [300.0, 100, 6, IGNORED]]
        self.assertEqual(judged([(0.9, 101, 141, 6), (0.8, 300, 101, 6), (0.7, 10, 10, 6)], truth), [(0.9, True), (0.7, False)])

    def test_folding_changes_no_answer(self):
        torch.manual_seed(2)
        network = BallHeads().eval()
        x = torch.rand(1, 9, 64, 96) * 255
        with torch.no_grad():
            before = best_balls(network(x))
            torch.testing.assert_close(best_balls(folded(network)(x)), before, atol=1e-3, rtol=1e-3)


class NumbersTest(unittest.TestCase):
    def drawings(self):
        masks = np.zeros((1, 32, 96, 96), np.float32)
        for k in range(32):
            masks[0, k, :, : 40 + k] = 1
        torsos = torch.full((4, 3, 96, 96), 90, dtype=torch.uint8)
        return DrawnNumbers(masks, np.full((1, 32), 0.5, np.float32), torsos, "cpu", 3)

    def test_the_same_seed_draws_the_same(self):
        one, other = self.drawings().batch(32), self.drawings().batch(32)
        self.assertTrue(all(torch.equal(a, b) for a, b in zip(one, other)))

    def test_hidden_small_and_missing_numbers_are_none(self):
        numbered, two = torch.tensor([True, True, True, True, False]), torch.tensor([True, False, True, True, True])
        seen, pixels = torch.tensor([0.9, 0.9, 0.4, 0.6, 0.9]), torch.tensor([20.0, 20.0, 20.0, 20.0, 20.0])
        self.assertEqual(DrawnNumbers.kinds(numbered, two, seen, pixels).tolist(), [TWO, ONE, NONE, UNCLEAR, NONE])
        small = DrawnNumbers.kinds(numbered, two, torch.ones(5), torch.tensor([5.0, 7.0, 9.5, 9.5, 9.5]))
        self.assertEqual(small.tolist(), [NONE, UNCLEAR, TWO, TWO, NONE])

    def test_probabilities_add_up_and_none_begins_with_naught(self):
        torch.manual_seed(1)
        reader = NumberReader(NumberHeads().eval(), 1.3)
        p = reader(torch.randint(256, (3, 64, 64, 3), dtype=torch.uint8))
        self.assertEqual(tuple(p.shape), (3, 101))
        self.assertTrue(torch.allclose(p.sum(1), torch.ones(3), atol=1e-5))


if __name__ == "__main__":
    unittest.main()
