"""Jersey numbers drawn into torsos: glyphs of many fonts, round the body, folded, shaded, half hidden, small, blurred and with a
codec's blocks; on drawn shirts and on photographed people. All colours are blue first, 0 to 1.

A crop shows a torso upright: its side is CROP_TORSOS times the way from the hips' middle to the shoulders', its middle lies
RAISED of that way above the torso's. vision/number cuts the same from film."""

import math

import numpy as np
import torch
import torch.nn.functional as F
from PIL import Image, ImageDraw, ImageFont

SIDE = 64
CANVAS = 128
CROP_TORSOS, RAISED = 1.25, 0.05
GLYPH = 96
CHARACTERS = "0123456789ABCDEFGHIJKLMNOPRSTUVW"
NONE, ONE, TWO, UNCLEAR = 0, 1, 2, 3
LEGIBLE, ILLEGIBLE = 9.0, 6.5  # heights of a number, pixels of the film
CLEARLY_SEEN, HARDLY_SEEN = 0.7, 0.5  # shares of a digit


def glyphs(file):
    """[32, 96, 96] masks, 0 to 1, left aligned with the digits' height filled, and their widths in heights; None where the font's
    digits are not all of one height, wider than high, or not all there."""
    font = ImageFont.truetype(str(file), 200)
    boxes = [font.getbbox(c) for c in CHARACTERS]
    heights = [b[3] - b[1] for b in boxes[:10]]
    if min(heights) < 60 or max(heights) > 1.12 * min(heights):
        return None
    masks = np.zeros((len(CHARACTERS), GLYPH, GLYPH), np.float32)
    widths = np.zeros(len(CHARACTERS), np.float32)
    for k, (character, box) in enumerate(zip(CHARACTERS, boxes)):
        width, height = box[2] - box[0], box[3] - box[1]
        if width < 4 or height < 60 or k < 10 and width > height:
            return None
        picture = Image.new("L", (width, height))
        ImageDraw.Draw(picture).text((-box[0], -box[1]), character, font=font, fill=255)
        columns = max(4, min(GLYPH, round(GLYPH * width / height)))
        masks[k, :, :columns] = np.asarray(picture.resize((columns, GLYPH), Image.Resampling.BOX), np.float32) / 255
        widths[k] = columns / GLYPH
    distinct = {masks[k].tobytes() for k in range(10)}
    return (masks, widths) if len(distinct) == 10 else None


def font_bank(files):
    """All usable fonts of the files: masks [F, 32, 96, 96], widths [F, 32]."""
    found = [g for g in (glyphs(f) for f in files) if g is not None]
    return np.stack([g[0] for g in found]), np.stack([g[1] for g in found])


class Levels:
    """Masks averaged to several sizes, so that small numbers are not aliased."""

    SIZES = (GLYPH, GLYPH // 2, GLYPH // 4)

    def __init__(self, masks):
        self.levels = [F.interpolate(masks.flatten(0, 1)[:, None], size=s, mode="area") for s in self.SIZES]
        self.characters = masks.shape[1]

    def sample(self, font, character, x, y, height):
        """Masks [n, H, W] at glyph coordinates: x in heights from the glyph's left, y from its top; height in pixels."""
        n = len(font)
        index = font * self.characters + character
        grid = torch.stack([x * 2 - 1, y * 2 - 1], 3)
        out = 0
        for k, level in enumerate(self.levels):
            low = self.SIZES[k] / 2 if k + 1 < len(self.levels) else 0
            high = self.SIZES[k - 1] / 2 if k else math.inf
            here = ((height > low) & (height <= high)).float().view(n, 1, 1)
            out = out + here * F.grid_sample(level[index], grid, align_corners=False)[:, 0]
        return out


class DrawnNumbers:
    """Makes batches on the device. torsos: bytes [N, 3, 96, 96] of photographed people, cut as the class comment says."""

    def __init__(self, masks, widths, torsos, device, seed):
        masks = torch.from_numpy(masks).to(device)
        self.plain = Levels(masks)
        grown = F.max_pool2d(F.pad(masks, (12, 12, 12, 12)), 13, 1)
        self.grown = Levels(grown)
        self.widths = torch.from_numpy(widths).to(device)
        self.torsos = torsos.to(device)
        self.device = device
        self.generator = torch.Generator(device=device)
        self.generator.manual_seed(seed)
        axis = (torch.arange(CANVAS, device=device).float() + 0.5) / CANVAS - 0.5
        self.y, self.x = torch.meshgrid(axis, axis, indexing="ij")
        basis = torch.arange(8).float()
        self.dct = torch.cos((2 * basis[None] + 1) * basis[:, None] * math.pi / 16) * 0.5
        self.dct[0] /= math.sqrt(2)
        self.dct = self.dct.to(device)

    def random(self, low, high, *shape):
        return torch.rand(*shape, generator=self.generator, device=self.device) * (high - low) + low

    def normal(self, scale, *shape):
        return torch.randn(*shape, generator=self.generator, device=self.device) * scale

    def some(self, share, n):
        return (self.random(0, 1, n, 1, 1, 1) < share).float()

    def integers(self, count, n):
        return torch.randint(count, (n,), generator=self.generator, device=self.device)

    def smooth(self, n, cells, channels=1):
        """Noise of unit size whose waves are a canvas / cells long."""
        coarse = self.normal(1, n, channels, cells, cells)
        return F.interpolate(coarse, size=(CANVAS, CANVAS), mode="bicubic", align_corners=False)

    def colours(self, n):
        """Kit colours [n, 3, 1, 1]: white, black, grey, and any hue."""
        hue, saturation, value = self.random(0, 1, n), self.random(0.4, 1, n), self.random(0.15, 1, n)
        sort = self.random(0, 1, n)
        saturation = torch.where(sort < 0.4, self.random(0, 0.12, n), saturation)
        value = torch.where(sort < 0.2, self.random(0.75, 1, n), torch.where(sort < 0.33, self.random(0.03, 0.25, n), value))
        channels = []
        for k in (1.0, 3.0, 5.0):  # blue, green, red
            at = torch.remainder(k + hue * 6, 6)
            channels.append(value - value * saturation * torch.minimum(at, 4 - at).clamp(0, 1))
        return torch.stack(channels, 1).view(n, 3, 1, 1)

    def photographs(self, n):
        """Torsos of photographed people, a little moved, turned and mirrored: [n, 3, CANVAS, CANVAS]."""
        pictures = self.torsos[self.integers(len(self.torsos), n)].float() / 255
        turn, size = self.normal(0.1, n), torch.exp(self.normal(0.12, n))
        flip = (self.random(0, 1, n) < 0.5).float() * 2 - 1
        rows = torch.stack(
            [
                torch.stack([flip * torch.cos(turn) * size, -torch.sin(turn) * size, self.normal(0.06, n)], 1),
                torch.stack([flip * torch.sin(turn) * size, torch.cos(turn) * size, self.normal(0.06, n)], 1),
            ],
            1,
        )
        grid = F.affine_grid(rows, [n, 3, CANVAS, CANVAS], align_corners=False)
        return F.grid_sample(pictures, grid, padding_mode="reflection", align_corners=False)

    def shirts(self, n):
        """Drawn torsos before photographs: a shirt with arm holes, collar, stripes and folds, skin, shorts."""
        behind = F.avg_pool2d(self.photographs(n), 5, 1, 2)
        skin = torch.tensor([0.45, 0.6, 0.8], device=self.device).view(1, 3, 1, 1) * self.random(0.25, 1.15, n, 1, 1, 1)
        half = self.random(0.24, 0.42, n, 1, 1)
        waist = half * self.random(0.75, 1.1, n, 1, 1)
        top, bottom = self.random(-0.48, -0.3, n, 1, 1), self.random(0.33, 0.6, n, 1, 1)
        x = (self.x + self.random(-0.06, 0.06, n, 1, 1) + 0.03 * self.smooth(n, 3)[:, 0])
        y = self.y[None] + 0.02 * self.smooth(n, 4)[:, 0]
        edge = half + (waist - half) * ((y - top) / (bottom - top)).clamp(0, 1)
        soft = 40.0
        body = ((edge - x.abs()) * soft).clamp(0, 1) * ((y - top) * soft).clamp(0, 1)
        arms = ((edge + self.random(0.08, 0.2, n, 1, 1) - x.abs()) * soft).clamp(0, 1) * ((y - top - 0.03) * soft).clamp(0, 1)
        neck = ((self.random(0.06, 0.13, n, 1, 1) - torch.hypot(x, (y - top) * 0.8)) * soft).clamp(0, 1)
        cloth = self.colours(n)
        shirt = cloth.expand(n, 3, CANVAS, CANVAS)
        trim = self.colours(n)
        side = ((x.abs() - edge + self.random(0.03, 0.12, n, 1, 1)) * soft).clamp(0, 1)[:, None] * self.some(0.3, n)
        shirt = shirt * (1 - side) + trim * side
        period = self.random(0.08, 0.3, n, 1, 1)
        stripe = (torch.sin(x / period * 2 * math.pi) > 0.3).float()[:, None] * self.some(0.06, n)
        shirt = shirt * (1 - stripe) + trim * stripe
        shorts = ((y - bottom) * soft).clamp(0, 1)[:, None]
        shirt = shirt * (1 - shorts) + self.colours(n) * shorts
        limb = torch.where(self.some(0.35, n) > 0, cloth, skin)
        out = behind * (1 - arms[:, None]) + limb * arms[:, None]
        out = out * (1 - body[:, None]) + shirt * body[:, None]
        return out * (1 - neck[:, None]) + skin * neck[:, None], body * (1 - neck)

    def text(self, out, n, share):
        """A line of letters as names and clubs have, somewhere above or below the middle."""
        font, count = self.integers(len(self.widths), n), 6
        height = self.random(0.05, 0.13, n, 1, 1)
        middle = torch.where(self.random(0, 1, n, 1, 1) < 0.6, self.random(-0.34, -0.2, n, 1, 1), self.random(0.22, 0.42, n, 1, 1))
        y = (self.y - middle) / height + 0.5 + 2 * self.random(-0.3, 0.3, n, 1, 1) * self.x ** 2 / height
        x = (self.x + 0.03 * self.normal(1, n, 1, 1)) / height + count / 3 * self.random(0.8, 1.1, n, 1, 1)
        mask = 0
        left = torch.zeros(n, 1, 1, device=self.device)
        for _ in range(count):
            letter = 10 + self.integers(len(CHARACTERS) - 10, n)
            mask = mask + self.plain.sample(font, letter, x - left, y, height.flatten() * CANVAS)
            left = left + self.widths[font, letter].view(n, 1, 1) + 0.1
        mask = mask.clamp(0, 1)[:, None] * self.some(share, n)
        return out * (1 - mask) + self.colours(n) * mask

    def digits(self, n):
        """Masks of the tens and of the ones (left and right), the outline, how much of each shows, and what they say."""
        font = self.integers(len(self.widths), n)
        tens, ones = self.integers(10, n), self.integers(10, n)
        two = (self.random(0, 1, n) < 0.72) & (tens > 0)
        height = torch.exp(self.random(math.log(0.13), math.log(0.56), n))
        stretch = torch.exp(self.normal(0.13, n)).view(n, 1, 1)
        gap = self.random(0.02, 0.22, n)
        w_tens, w_ones = self.widths[font, tens] * two.float(), self.widths[font, ones]
        total = w_tens + w_ones + gap * two.float()
        # No number is wider than its back.
        height = torch.minimum(height, 0.62 / (total * stretch.flatten()))
        h = height.view(n, 1, 1)
        yaw = self.normal(0.45, n, 1, 1).clamp(-1.3, 1.3)
        radius = self.random(0.3, 0.5, n, 1, 1)
        turn = self.normal(0.08, n, 1, 1)
        fold = self.random(0, 0.03, n, 1, 1)
        x = self.x - self.normal(0.05, n, 1, 1) + fold * self.smooth(n, 5)[:, 0]
        y = self.y - self.normal(0.07, n, 1, 1) + fold * self.smooth(n, 5)[:, 0]
        x, y = x * torch.cos(turn) + y * torch.sin(turn), y * torch.cos(turn) - x * torch.sin(turn)
        angle = torch.asin((x / radius).clamp(-0.999, 0.999))
        front = ((1.2 - angle.abs()) * 12).clamp(0, 1)
        across = radius * (angle - yaw)
        u = (across + self.normal(0.15, n, 1, 1) * y) / (h * stretch) + (total / 2).view(n, 1, 1)
        v = y / h + 0.5
        inside = ((v > -0.2) & (v < 1.2)).float()
        pixels = height * CANVAS
        start = (w_tens + gap * two.float()).view(n, 1, 1)
        shown = front * inside
        left = self.plain.sample(font, tens, u, v, pixels) * shown * two.float().view(n, 1, 1)
        right = self.plain.sample(font, ones, u - start, v, pixels) * shown
        # The grown masks reach a sixteenth of the height beyond the glyph.
        outline = self.grown.sample(font, ones, (u - start + 6 / GLYPH) / (1 + 12 / GLYPH), (v + 6 / GLYPH) / (1 + 12 / GLYPH), pixels)
        more = self.grown.sample(font, tens, (u + 6 / GLYPH) / (1 + 12 / GLYPH), (v + 6 / GLYPH) / (1 + 12 / GLYPH), pixels)
        outline = torch.maximum(outline, more * two.float().view(n, 1, 1)) * front
        share = self.plain.levels[2].mean((1, 2, 3))
        full = [share[font * len(CHARACTERS) + d] * (height * CANVAS) ** 2 * stretch.flatten() for d in (tens, ones)]
        return left, right, outline, full, two, tens, ones, height

    def arms(self, n):
        """What hides: up to three limbs or bodies before the torso, [n, 1, CANVAS, CANVAS]."""
        mask = torch.zeros(n, CANVAS, CANVAS, device=self.device)
        for share in (0.45, 0.2, 0.1):
            angle = self.random(0, math.pi, n, 1, 1)
            offset, width = self.random(-0.5, 0.5, n, 1, 1), self.random(0.03, 0.16, n, 1, 1)
            distance = (self.x * torch.cos(angle) + self.y * torch.sin(angle) - offset).abs()
            along = -self.x * torch.sin(angle) + self.y * torch.cos(angle) - self.random(-0.4, 0.4, n, 1, 1)
            limb = ((width - distance) * 50).clamp(0, 1) * ((along + self.random(0, 0.5, n, 1, 1)) * 50).clamp(0, 1)
            mask = torch.maximum(mask, limb * (self.random(0, 1, n, 1, 1) < share).float())
        return mask[:, None]

    def batch(self, n):
        """Pictures [n, 3, 64, 64] 0 to 255; kind, tens and ones [n]."""
        drawn, body = self.shirts(n)
        photographed = self.photographs(n)
        on_photograph = self.some(0.5, n)
        ground = drawn * (1 - on_photograph) + photographed * on_photograph
        ground = self.text(ground, n, 0.35)
        left, right, outline, full, two, tens, ones, height = self.digits(n)
        numbered = self.random(0, 1, n) < 0.72
        there = numbered.float().view(n, 1, 1, 1)
        ink, rim = self.colours(n), self.colours(n)
        under = (ground * (left + right)[:, None]).sum((2, 3)) / ((left + right).sum((1, 2)).clamp(min=1)[:, None])
        contrast = (ink.flatten(1) - under).abs().sum(1)
        # Someone chose the colours to be read: too close ones are turned to their opposite.
        far = torch.where(under.mean(1, keepdim=True) > 0.5, self.random(0, 0.2, n, 1), self.random(0.8, 1, n, 1))
        ink = torch.where((contrast < 0.7).view(n, 1, 1, 1), far.view(n, 1, 1, 1).expand(n, 3, 1, 1), ink)
        cloth_light = ground.mean(1, keepdim=True)
        shade_of_cloth = (cloth_light / F.avg_pool2d(cloth_light, 31, 1, 15, count_include_pad=False).clamp(min=0.05)).clamp(0.5, 1.5)
        shade_of_cloth = 1 + (shade_of_cloth - 1) * on_photograph * self.random(0, 0.8, n, 1, 1, 1)
        rimmed = outline[:, None] * there * self.some(0.4, n)
        out = ground * (1 - rimmed) + rim * shade_of_cloth * rimmed
        digits = (left + right).clamp(0, 1)[:, None] * there
        out = out * (1 - digits) + ink * shade_of_cloth * digits
        folds = 1 + self.random(0, 0.16, n, 1, 1, 1) * self.smooth(n, 4) + self.random(0, 0.1, n, 1, 1, 1) * self.smooth(n, 9)
        slope = 1 + self.x * self.normal(0.5, n, 1, 1, 1) + self.y * self.normal(0.3, n, 1, 1, 1)
        out = out * (folds * slope).clamp(0.25, 1.6)
        arms = self.arms(n)
        skin = torch.tensor([0.45, 0.6, 0.8], device=self.device).view(1, 3, 1, 1) * self.random(0.2, 1.15, n, 1, 1, 1)
        cover = torch.where(self.some(0.5, n) > 0, skin.expand(n, 3, CANVAS, CANVAS), self.photographs(n))
        out = out * (1 - arms) + cover * arms
        seen = [(m * (1 - arms[:, 0])).sum((1, 2)) / f.clamp(min=1) for m, f in zip((left, right), full)]
        pictures, sides = self.filmed(out.clamp(0, 1), n)
        kind = self.kinds(numbered, two, torch.where(two, torch.minimum(*seen), seen[1]), height * sides)
        return pictures, kind, tens, ones

    @staticmethod
    def kinds(numbered, two, seen, pixels):
        clear = (seen >= CLEARLY_SEEN) & (pixels >= LEGIBLE)
        hidden = (seen < HARDLY_SEEN) | (pixels < ILLEGIBLE)
        kind = torch.where(two, TWO, ONE)
        kind = torch.where(clear, kind, torch.where(hidden, NONE, UNCLEAR))
        return torch.where(numbered, kind, torch.full_like(kind, NONE))

    def filmed(self, x, n):
        """Light, blur, the film's own small size, noise, a codec's blocks, and enlarged again. Also the film's sizes [n]."""
        x = ((x - 0.5) * self.random(0.5, 1.25, n, 1, 1, 1) + 0.5) * self.random(0.45, 1.3, n, 1, 1, 1)
        x = x * (1 + self.normal(0.07, n, 3, 1, 1))
        smear = F.avg_pool2d(F.pad(x, (6, 6, 0, 0), mode="replicate"), (1, 13), 1)
        x = torch.where(self.some(0.12, n) > 0, smear, x)
        blurred = F.avg_pool2d(F.pad(x, (2, 2, 2, 2), mode="replicate"), 5, 1)
        x = torch.where(self.some(0.3, n) > 0, blurred, x).clamp(0, 1)
        out, sides = [], torch.zeros(n, device=self.device)
        parts = 16
        chosen = torch.exp(self.random(math.log(20), math.log(110), parts)).round().long().tolist()
        for part, side in zip(torch.arange(n, device=self.device).chunk(parts), chosen):
            small = F.interpolate(x[part], size=(side, side), mode="area")
            small = small + self.normal(1, *small.shape) * self.random(0, 0.04, len(part), 1, 1, 1)
            small = self.blocks(small, part)
            out.append(F.interpolate(small, size=(SIDE, SIDE), mode="bilinear" if side < SIDE else "area", **({"align_corners": False} if side < SIDE else {})))
            sides[part] = side
        return (torch.cat(out) * 255).round().clamp(0, 255), sides

    def blocks(self, x, part):
        """Coefficients of 8 x 8 blocks rounded, coarser where waves are finer, as codecs do; the grid lies anywhere."""
        n, _, height, width = x.shape
        dy, dx = (int(v) for v in torch.randint(8, (2,), generator=self.generator, device=self.device))
        padded = F.pad(x, (dx, 16 - dx, dy, 16 - dy), mode="replicate")[:, :, : (height + 15) // 8 * 8, : (width + 15) // 8 * 8]
        rows, columns = padded.shape[2] // 8, padded.shape[3] // 8
        tiles = padded.view(n, 3, rows, 8, columns, 8).permute(0, 1, 2, 4, 3, 5)
        waves = self.dct @ tiles @ self.dct.T
        order = torch.arange(8, device=self.device).float()
        step = self.random(0.004, 0.12, n, 1, 1, 1, 1, 1) * (1 + 0.35 * (order[:, None] + order[None]))
        coarse = (waves / step).round() * step
        waves = torch.where((self.random(0, 1, n, 1, 1, 1, 1, 1) < 0.75), coarse, waves)
        tiles = self.dct.T @ waves @ self.dct
        back = tiles.permute(0, 1, 2, 4, 3, 5).reshape(n, 3, rows * 8, columns * 8)
        return back[:, :, dy : dy + height, dx : dx + width].clamp(0, 1)
