#!/usr/bin/env python3
"""Makes a group of the corpus. usage: make.py heldout|tuning OUT [NAME ...]   (see README.md)"""

import importlib
import sys
from pathlib import Path

import writers


def main(group, out, *names):
    out = Path(out)
    out.mkdir(parents=True, exist_ok=True)
    for name, make in importlib.import_module(group).FILES.items():
        if names and not any(n in name for n in names):
            continue
        truth = make(out / name)
        (out / (name.rsplit(".", 1)[0] + ".expected.json")).write_text(truth.text(name), encoding="utf-8", newline="\n")
    writers.flush()


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
