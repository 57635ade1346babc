"""A small photographer's bench: materials, daylight, a camera with a real aperture, and the finished exposure.

Lengths are millimetres, z is up, the camera stands towards -y. Mitsuba must have a variant set before this is imported.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import mitsuba as mi
import numpy as np
from mitsuba_oidn import denoise
from numpy.typing import NDArray

from tests.demo_pictures.meshes import Mesh
from tests.demo_pictures.surfaces import Colours, relief, tone

Material = dict[str, Any]


def texture(colours: Colours, *, tiles: float = 1.0, raw: bool = False) -> Material:
    """A picture as a Mitsuba texture; rows run downwards as v grows."""
    data = np.ascontiguousarray((np.clip(colours, 0, 1) * 255 + 0.5).astype(np.uint8))
    out: Material = {"type": "bitmap", "bitmap": mi.Bitmap(data if data.ndim == 3 else data[..., None]), "raw": raw}
    if tiles != 1:
        out["to_uv"] = mi.ScalarTransform4f().scale([tiles, tiles, 1])
    return out


def _flat(colour: str) -> Material:
    r, g, b = (float(v) for v in tone(colour) ** 2.2)
    return {"type": "rgb", "value": [r, g, b]}


def _colour(colour: str | Material) -> Material:
    return _flat(colour) if isinstance(colour, str) else colour


def _both(material: Material) -> Material:
    """The same on either side of a surface."""
    return {"type": "twosided", "bsdf": material}


def bumpy(material: Material, heights: NDArray[np.float64], depth: float, *, tiles: float = 1.0) -> Material:
    """A material with a relief of `depth` mm."""
    inner = material["bsdf"] if material["type"] == "twosided" else material
    return _both({"type": "bumpmap", "height": texture(heights, tiles=tiles, raw=True), "scale": depth, "bsdf": inner})


def matt(colour: str | Material) -> Material:
    """Chalk, paper, cloth: seen from either side."""
    return _both({"type": "diffuse", "reflectance": _colour(colour)})


def glazed(colour: str | Material, rough: float = 0.06) -> Material:
    """A coat with a shine over a colour: glaze, lacquer, gloss print."""
    return _both(
        {
            "type": "roughplastic",
            "diffuse_reflectance": _colour(colour),
            "alpha": rough,
            "int_ior": 1.5,
            "nonlinear": True,
        }
    )


def satin_print(colour: str | Material, rough: float = 0.3) -> Material:
    """A print in a clear coat on metal."""
    return _both(
        {
            "type": "principled",
            "base_color": _colour(colour),
            "metallic": 0.12,
            "roughness": rough,
            "specular": 0.6,
            "clearcoat": 0.7,
            "clearcoat_gloss": 0.82,
        }
    )


def metal(kind: str = "Al", rough: float = 0.2) -> Material:
    """Bare metal: Al, Cu, Au (for brass) ..."""
    return _both({"type": "roughconductor", "material": kind, "alpha": rough, "distribution": "ggx"})


@dataclass(frozen=True)
class Camera:
    """Where the picture is taken from: `away` mm off the target, `round` degrees from -y, `up` degrees of elevation."""

    target: tuple[float, float, float]
    away: float
    up: float
    round: float = 0.0
    view: float = 30.0
    """Angle over the shorter side, in degrees."""
    aperture: float = 4.0
    focus: tuple[float, float, float] | None = None

    def place(self) -> NDArray[np.float64]:
        """The lens's position."""
        a, e = np.radians(self.round - 90), np.radians(self.up)
        return np.array(self.target) + self.away * np.array([np.cos(a) * np.cos(e), np.sin(a) * np.cos(e), np.sin(e)])


@dataclass
class Stage:
    """Collects pieces and lights; meshes are handed to the renderer through files in `folder`."""

    folder: Path
    parts: dict[str, Any] = field(default_factory=lambda: {"type": "scene"})

    def add(self, mesh: Mesh, material: Material) -> None:
        """Put a mesh on the stage."""
        name = f"part{len(self.parts):03d}"
        file = self.folder / f"{name}.ply"
        _write_ply(mesh, file)
        self.parts[name] = {"type": "ply", "filename": str(file), "face_normals": not mesh.smooth, "surface": material}

    def plane(
        self, width: float, height: float, material: Material, at: tuple[float, float, float], *, upright: bool = False
    ) -> None:
        """A floor, or with `upright` a wall that faces -y."""
        t = mi.ScalarTransform4f().translate(list(at))
        if upright:
            t = t @ mi.ScalarTransform4f().rotate([1, 0, 0], 90)
        t = t @ mi.ScalarTransform4f().scale([width / 2, height / 2, 1])
        self.parts[f"part{len(self.parts):03d}"] = {"type": "rectangle", "to_world": t, "surface": material}

    def window(
        self,
        at: tuple[float, float, float],
        towards: tuple[float, float, float],
        size: tuple[float, float],
        power: float,
        warmth: float = 0.1,
    ) -> None:
        """A bright pane of daylight; `warmth` 0 is white, 0.3 late sun, below 0 a blue sky."""
        t = mi.ScalarTransform4f().look_at(
            origin=list(at), target=list(towards), up=[0, 0.01, 1]
        ) @ mi.ScalarTransform4f().scale([size[0] / 2, size[1] / 2, 1])
        light = [power * (1 + 0.5 * warmth), power, power * (1 - 0.7 * warmth)]
        self.parts[f"part{len(self.parts):03d}"] = {
            "type": "rectangle",
            "to_world": t,
            "light": {"type": "area", "radiance": {"type": "rgb", "value": light}},
        }

    def sky(self, power: float = 0.35, tint: tuple[float, float, float] = (0.95, 1.0, 1.08)) -> None:
        """Even light from all round."""
        self.parts["sky"] = {"type": "constant", "radiance": {"type": "rgb", "value": [power * t for t in tint]}}

    def wall_light(self, side: float = -1, *, power: float = 13, warmth: float = 0.12, fill: float = 0.45) -> None:
        """Light on a wall at y = 0 from a window before it to one side, clear of the camera's view."""
        self.window((side * 1150, -620, 900), (0, 0, 380), (700, 1000), power, warmth)
        self.sky(fill)

    def daylight(
        self, *, side: float = -1, height: float = 620, power: float = 15, warmth: float = 0.1, fill: float = 0.4
    ) -> None:
        """A tall window to the left (side -1) or right (1), somewhat behind the pieces, and a soft fill."""
        self.window((side * 760, 260, height), (0, 0, 20), (620, 760), power, warmth)
        self.window((-side * 500, -700, 900), (0, 0, 0), (700, 500), power * 0.11, 0.0)
        self.sky(fill)


def bench_material(colours: Colours, *, rough: float = 0.35, depth: float = 0.25) -> Material:
    """A worktop: an oiled or waxed surface from a picture."""
    grey = colours.mean(axis=2)
    relief_of = np.clip((grey - grey.mean()) / max(grey.std(), 1e-6) * 0.18 + 0.5, 0, 1)
    return bumpy(
        {
            "type": "roughplastic",
            "diffuse_reflectance": texture(colours),
            "alpha": rough,
            "int_ior": 1.35,
            "nonlinear": False,
        },
        relief_of,
        depth,
    )


def slate_sides() -> Material:
    """Hewn slate."""
    return matt("#4a4a49")


def slate_face(colours: Colours) -> Material:
    """The coated, still uneven face of a slate."""
    return bumpy(
        {
            "type": "roughplastic",
            "diffuse_reflectance": texture(colours),
            "alpha": 0.32,
            "int_ior": 1.42,
            "nonlinear": True,
        },
        relief(512, 8, 2.3, stretch=1.4),
        0.55,
    )


def rendered(
    stage: Stage, camera: Camera, size: tuple[int, int], samples: int, *, seed: int = 0, bright: float = 1.0
) -> NDArray[np.uint8]:
    """The finished picture, denoised, exposed and toned, as sRGB bytes."""
    width, height = size
    origin = camera.place()
    focus = np.array(camera.focus or camera.target)
    axis = np.array(camera.target) - origin
    depth = float(np.dot(focus - origin, axis / np.linalg.norm(axis)))
    stage.parts["camera"] = {
        "type": "thinlens",
        "to_world": mi.ScalarTransform4f().look_at(
            origin=[float(v) for v in origin], target=list(camera.target), up=[0, 0, 1]
        ),
        "fov": camera.view,
        "fov_axis": "smaller",
        "aperture_radius": camera.aperture,
        "focus_distance": depth,
        "film": {
            "type": "hdrfilm",
            "width": width,
            "height": height,
            "rfilter": {"type": "box"},
            "pixel_format": "rgb",
        },
    }
    stage.parts["integrator"] = {
        "type": "aov",
        "aovs": "albedo:albedo,normal:sh_normal",
        "inner": {"type": "path", "max_depth": 9},
    }
    scene = mi.load_dict(stage.parts)
    per_pass = max(1, min(samples, 14_000_000 // (width * height)))
    passes = -(-samples // per_pass)
    total = (
        sum(np.array(mi.render(scene, spp=per_pass, seed=seed * 1000 + k), dtype=np.float64) for k in range(passes))
        / passes
    )
    layers = np.nan_to_num(np.asarray(total, dtype=np.float32))
    light, albedo, normal = (np.ascontiguousarray(layers[..., k : k + 3]) for k in (0, 3, 6))
    light = np.minimum(light, np.float32(60))
    return developed(np.asarray(denoise(light, np.clip(albedo, 0, 1), normal, hdr=True), dtype=np.float64), bright)


def developed(light: NDArray[np.float64], bright: float) -> NDArray[np.uint8]:
    """Exposure for the lights, a soft shoulder, a touch of contrast and fall-off to the corners."""
    luma = light @ [0.2126, 0.7152, 0.0722]
    x = light * (0.9 * bright / max(float(np.percentile(luma, 97)), 1e-6))
    i, j = np.meshgrid(np.linspace(-1, 1, x.shape[0]), np.linspace(-1, 1, x.shape[1]), indexing="ij")
    x *= (1 - 0.13 * (i**2 + j**2) / 2)[..., None]
    x = np.where(x < 0.6, x, 1 - 0.4 * np.exp(-(x - 0.6) / 0.4))
    y = np.where(x <= 0.0031308, 12.92 * x, 1.055 * np.maximum(x, 1e-9) ** (1 / 2.4) - 0.055)
    y = y + 0.055 * (y * (1 - y) * (2 * y - 1)) * 4
    y *= np.array([1.004, 0.998, 0.992])
    return np.asarray(np.clip(y, 0, 1) * 255 + 0.5, dtype=np.uint8)


def _write_ply(mesh: Mesh, file: Path) -> None:
    """The mesh as binary PLY."""
    kinds = [("x", "<f4"), ("y", "<f4"), ("z", "<f4"), ("u", "<f4"), ("v", "<f4")]
    columns = np.column_stack([mesh.vertices, mesh.uv])
    if mesh.smooth:
        kinds[3:3] = [("nx", "<f4"), ("ny", "<f4"), ("nz", "<f4")]
        columns = np.column_stack([mesh.vertices, _normals(mesh), mesh.uv])
    rows = np.empty(len(mesh.vertices), dtype=kinds)
    for k, (name, _) in enumerate(kinds):
        rows[name] = columns[:, k]
    faces = np.empty(len(mesh.faces), dtype=[("n", "u1"), ("i", "<i4", 3)])
    faces["n"], faces["i"] = 3, mesh.faces
    head = f"ply\nformat binary_little_endian 1.0\nelement vertex {len(rows)}\n" + "".join(
        f"property float {name}\n" for name, _ in kinds
    )
    head += f"element face {len(faces)}\nproperty list uchar int vertex_indices\nend_header\n"
    file.write_bytes(head.encode("ascii") + rows.tobytes() + faces.tobytes())


def _normals(mesh: Mesh) -> NDArray[np.float64]:
    """Vertex normals weighed by area; vertices at the same place share theirs."""
    a, b, c = (mesh.vertices[mesh.faces[:, k]] for k in range(3))
    face = np.cross(b - a, c - a)
    keys = np.unique(np.rint(mesh.vertices * 1000).astype(np.int64), axis=0, return_inverse=True)[1].ravel()
    out = np.zeros((keys.max() + 1, 3))
    for k in range(3):
        np.add.at(out, keys[mesh.faces[:, k]], face)
    out /= np.maximum(np.linalg.norm(out, axis=1), 1e-12)[:, None]
    return np.asarray(out[keys])
