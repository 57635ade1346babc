"""The demo workshop's pictures, all made here: designs drawn in SVG, photographs rendered from them.

Run `python -m tests.demo_pictures artwork`, then `python -m tests.demo_pictures photos`, from the
repository's root; `--draft` renders small and fast, and names after it (`regatta-mug/mug`) make those shots only.
For development only; nothing of it is needed to make a site. It wants, in an environment of its own:

    pip install mitsuba mitsuba-oidn resvg-py pillow pillow-heif numpy contourpy fonttools \\
        font-fjallaone font-caladea font-amatic-sc font-source-serif-pro

Where Mitsuba finds no LLVM of version 16 or later it is slower (variant `scalar_rgb`); the environment
variable `DRJIT_LIBLLVM_PATH` may point to one. Every seed is fixed: the same versions make the same pictures.
"""
