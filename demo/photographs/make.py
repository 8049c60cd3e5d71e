"""Draws the demo's photographs: a bay of the slab on three days, and eight sample panels.

    python make.py        (numpy, scipy, Pillow; writes the JPEG files beside it)

All of it is invented. Panels follow the two-flux law of colorants in a layer, with a scatter of our own;
the slab dries out in patches. Nothing here was measured, and no check of the program rests on it.
"""
import pathlib

import numpy as np
from PIL import Image
from scipy.ndimage import gaussian_filter

HERE = pathlib.Path(__file__).parent
GRAY_CARD = 0.184


def noise(rng, shape, size):
    """Smooth noise of unit spread; size in pixels."""
    field = gaussian_filter(rng.standard_normal(shape), size, mode="wrap")
    return (field - field.mean()) / field.std()


def jpeg(name, light, rng, exposure):
    """Linear light 0 to 1 to a photograph."""
    light = light * exposure + rng.standard_normal(light.shape) * 0.0025
    light = np.clip(light, 0, 1)
    coded = np.where(light <= 0.0031308, 12.92 * light, 1.055 * light ** (1 / 2.4) - 0.055)
    Image.fromarray((coded * 255 + 0.5).astype(np.uint8)).save(HERE / name, quality=86, subsampling=0)


def lamp(rng, shape, fall):
    """Light that falls off smoothly across the picture."""
    y, x = np.mgrid[0:shape[0], 0:shape[1]]
    angle = rng.uniform(0, 2 * np.pi)
    along = (x / shape[1] - 0.5) * np.cos(angle) + (y / shape[0] - 0.5) * np.sin(angle)
    return np.exp(fall * along)


def slab(name, seed, depth, share):
    """The same bay: damp patches of a depth in ln of light, over a share of it."""
    rng = np.random.default_rng(seed)
    shape = (720, 960)
    where = noise(np.random.default_rng(7), shape, 46)  # the patches keep their place
    edge = np.quantile(where, 1 - share)
    damp = 1 / (1 + np.exp(-(where - edge) / 0.16))
    base = np.array([0.335, 0.318, 0.286])
    fine = 0.03 * noise(rng, shape, 1.1) + 0.004 * noise(rng, shape, 14)
    colors = base * np.exp(fine)[..., None]
    colors *= np.exp(-depth * damp[..., None] * np.array([0.95, 1.0, 1.06]))
    top, left = 500, 90
    card = colors.copy()
    card[top:top + 130, left:left + 180] = GRAY_CARD * np.exp(0.01 * noise(rng, (130, 180), 1.0))[..., None]
    card[top + 130:top + 134, left:left + 184] *= 0.7
    jpeg(name, card * lamp(rng, shape, 0.22)[..., None], rng, 1.55)


# Strength of each stain per coat, by channel of linear light, and what coats and water do.
STRENGTH = {"umber": np.array([1.1, 2.9, 7.5]), "slate": np.array([3.2, 2.7, 2.3])}
BARE_SEALED = np.array([0.236, 0.222, 0.196])


def mixing(bare, mix, water, coats):
    q = (1 - bare) ** 2 / (2 * bare)
    total = sum(mix.values())
    for stain, parts in mix.items():
        q = q + parts / total * STRENGTH[stain] * coats ** 0.8 / (1 + water) ** 0.85
    return 1 + q - np.sqrt(q * q + 2 * q)


def panel(name, seed, mix=None, water=0.0, coats=1):
    """A panel of 18 in on a bench, a gray card beside it. 540 pixels are 18 in."""
    rng = np.random.default_rng(seed)
    shape, side = (640, 900), 540
    color = BARE_SEALED if mix is None else mixing(BARE_SEALED, mix, water, coats) * np.exp(0.015 * rng.standard_normal(3))
    bench = np.array([0.42, 0.33, 0.21]) * np.exp(0.05 * noise(rng, shape, 2.0) + 0.08 * noise(rng, (shape[0], 1), 3.0))[..., None]
    small = noise(rng, (side, side), 2.2)
    clouds = noise(rng, (side, side), 24)
    spread = 0.03 if mix is None else 0.10
    mottle = np.exp(spread * (0.55 * small + 0.8 * clouds))
    warm = np.exp((0.0 if mix is None else 0.05) * clouds)
    tile = color * mottle[..., None] * np.stack([warm, np.ones_like(warm), 1 / warm], axis=-1)
    top, left = 50, 300
    bench[top + 8:top + side + 8, left + 8:left + side + 8] *= 0.62
    bench[top:top + side, left:left + side] = tile
    bench[220:400, 60:230] = GRAY_CARD * np.exp(0.01 * noise(rng, (180, 170), 1.0))[..., None]
    jpeg(name, bench * lamp(rng, shape, 0.1)[..., None], rng, 1.7)


slab("bay-day-11.jpg", 1, 0.30, 0.42)
slab("bay-day-18.jpg", 2, 0.17, 0.30)
slab("bay-day-25.jpg", 3, 0.105, 0.20)
panel("panel-bare.jpg", 10)
panel("panel-1.jpg", 11, {"umber": 1}, 1, 2)
panel("panel-2.jpg", 12, {"umber": 2, "slate": 1}, 2, 2)
panel("panel-3.jpg", 13, {"umber": 1}, 4, 1)
panel("panel-4.jpg", 14, {"umber": 1}, 1, 1)
panel("panel-5.jpg", 15, {"slate": 1}, 1, 2)
panel("panel-6.jpg", 16, {"slate": 1}, 3, 1)
panel("panel-7.jpg", 17, {"umber": 1, "slate": 1}, 1, 1)
