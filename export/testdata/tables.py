"""Reads CSV files by Python's csv and one spreadsheet by openpyxl, and prints
their cells as JSON: {"csv": {file: rows}, "xlsx": {sheet: rows},
"formulas": [cells that openpyxl takes for formulas], "quoted": [cells marked]}.
A cell of the spreadsheet is [type, value]."""
import csv, json, os, sys

import openpyxl

out = {"csv": {}, "xlsx": {}, "formulas": [], "quoted": []}
for name in sys.argv[1:]:
    if name.endswith(".csv"):
        with open(name, encoding="utf-8-sig", newline="") as f:
            out["csv"][os.path.basename(name)] = list(csv.reader(f, strict=True))
        continue
    book = openpyxl.load_workbook(name)
    for sheet in book:
        rows = []
        for row in sheet.iter_rows():
            cells = []
            for c in row:
                cells.append([c.data_type, c.value])
                if c.data_type == "f":
                    out["formulas"].append(f"{sheet.title}!{c.coordinate}")
                if c.quotePrefix:
                    out["quoted"].append(c.value)
            rows.append(cells)
        out["xlsx"][sheet.title] = rows
json.dump(out, sys.stdout)
