"""Noise that repeats at its edges, filtered in the frequency domain."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray


def fractal(
    shape: tuple[int, int], rng: np.random.Generator, slope: float, *, stretch: float = 1.0, coarsest: float = 0.0
) -> NDArray[np.float64]:
    """Noise of mean 0 and spread 1 whose power falls with frequency to the `slope`; `stretch` draws it out sideways.

    Features larger than 1 / `coarsest` of the picture's height are left out.
    """
    fy = np.fft.fftfreq(shape[0])[:, None] * shape[0]
    fx = np.fft.rfftfreq(shape[1])[None, :] * shape[0]
    f = np.hypot(fy, fx * stretch)
    f[0, 0] = 1
    filtered = np.fft.rfft2(rng.normal(size=shape)) * f ** (-slope / 2) * (f >= coarsest)
    filtered[0, 0] = 0
    out = np.fft.irfft2(filtered, s=shape)
    return np.asarray(out / out.std(), dtype=np.float64)


def blurred(picture: NDArray[np.float64], width: float) -> NDArray[np.float64]:
    """A picture blurred by a bell curve of `width` pixels, wrapping at its edges."""
    fy = np.fft.fftfreq(picture.shape[0])[:, None]
    fx = np.fft.rfftfreq(picture.shape[1])[None, :]
    return np.fft.irfft2(np.fft.rfft2(picture) * np.exp(-2 * (np.pi * width) ** 2 * (fx**2 + fy**2)), s=picture.shape)
