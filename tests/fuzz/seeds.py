"""Real lines as first texts: seeds.py FOLDER CORPUS. Each file is the problem's number and up to six lines."""
import json
import pathlib
import sys

folder, corpus = map(pathlib.Path, sys.argv[1:3])
for number, path in enumerate(sorted(corpus.glob("*.json"))):
    for working in json.loads(path.read_text())["workings"]:
        lines = [line["line"] for line in working["lines"]][:6]
        name = f"{path.stem}_{working['pupil'].split(':')[0].split(',')[0]}"
        (folder / name).write_bytes(bytes([number * 2]) + "\n".join(lines).encode())
