"""Public functions of the trade packages that nothing but tests uses, one a line.

    python tests/measure/unused_functions.py

A function counts as used where its name stands in another module of the library, a lesson, a key
or the coursework, other than in an import by its own package.
"""

import ast
import json
import re
from pathlib import Path

KIT = Path(__file__).parents[2]
TRADES = ("yields", "ratios", "sauces", "brine", "cuts", "foods", "heat", "safety", "service")


def public_functions(file):
    """Names of a module's own public functions."""
    body = ast.parse(file.read_text(encoding="utf-8")).body
    return [node.name for node in body
            if isinstance(node, ast.FunctionDef) and not node.name.startswith("_")]  # fmt: skip


def code_of(file):
    """A module's or a notebook's code without docstrings and imports."""
    text = file.read_text(encoding="utf-8")
    if file.suffix == ".ipynb":
        cells = json.loads(text)["cells"]
        code = [cell for cell in cells if cell["cell_type"] == "code"]
        text = "\n".join("".join(cell["source"]) for cell in code)
    text = re.sub(r'"""(.*?)"""', "", text, flags=re.DOTALL)
    text = re.sub(r"^\s*from [\w.]+ import (\((.|\n)*?\)|.*)$", "", text, flags=re.MULTILINE)
    return re.sub(r"^def \w+", "", text, flags=re.MULTILINE)


def unused():
    """(module, function) for each that nothing uses."""
    files = [*KIT.glob("kitchenmath/**/*.py"), *KIT.glob("instructor/**/*.py"),
             *KIT.glob("lessons/*.ipynb")]  # fmt: skip
    files = [file for file in files if file.name != "__init__.py"]
    words = set(re.findall(r"\w+", "\n".join(map(code_of, files))))
    return [
        (str(file.relative_to(KIT)), name)
        for trade in TRADES
        for file in sorted((KIT / "kitchenmath" / trade).glob("*.py"))
        for name in public_functions(file)
        if name not in words
    ]


if __name__ == "__main__":
    found = unused()
    for module, name in found:
        print(f"{module}: {name}")
    print(f"{len(found)} functions that nothing but tests uses")
