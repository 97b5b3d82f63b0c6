#!/usr/bin/env python3
"""Reads the first sheet's values with openpyxl, read-only. usage: read_openpyxl.py FILE"""
import sys

import openpyxl

cells = 0
for row in openpyxl.load_workbook(sys.argv[1], read_only=True).worksheets[0].iter_rows(values_only=True):
    cells += sum(v is not None for v in row)
print(cells, "cells")
