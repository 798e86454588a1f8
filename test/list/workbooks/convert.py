"""Lets LibreOffice write delimited parts lists anew as workbooks of both kinds, and says what `compare`
finds changed: nothing is expected. Run by hand, after a build:

    apt-get install --no-install-recommends libreoffice-calc
    python3 test/list/workbooks/convert.py FOLDER

FOLDER holds the lists. Cells are taken as texts, so that the program makes no numbers of them.
"""

import pathlib
import shutil
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).parents[3].resolve()
UTF8, UTF16 = 76, 65535
AS_TEXT = "/".join(f"{column}/2" for column in range(1, 41))


def delimiter(text):
    """The sign by which the first lines are parted."""
    head = text.splitlines()[:20]
    return max("\t;,:", key=lambda sign: sum(sign in line for line in head) - (sign == ":") / 2)


def convert(source, folder, kind):
    data = source.read_bytes()
    is_wide = data[:2] in (b"\xff\xfe", b"\xfe\xff")
    text = data.decode("utf-16" if is_wide else "utf-8")
    copy = folder / f"{source.stem}.csv"
    shutil.copyfile(source, copy)
    options = f"CSV:{ord(delimiter(text))},34,{UTF16 if is_wide else UTF8},1,{AS_TEXT}"
    subprocess.run(
        [
            "soffice",
            f"-env:UserInstallation=file://{folder}/profile",
            "--headless",
            "--convert-to",
            kind,
            f"--infilter={options}",
            "--outdir",
            folder,
            copy,
        ],
        check=True,
        capture_output=True,
    )
    return copy.with_suffix(f".{kind}")


def changes(before, after):
    found = subprocess.run(
        ["node", ROOT / "dist/kitquill.mjs", "compare", before, after],
        capture_output=True,
        text=True,
    )
    return " ".join(found.stdout.split("\n", 1)[-1].split()) or found.stderr.strip()


different = 0
with tempfile.TemporaryDirectory() as name:
    for source in sorted(pathlib.Path(sys.argv[1]).glob("*.[ct]sv")):
        for kind in ("xlsx", "ods"):
            told = changes(source, convert(source, pathlib.Path(name), kind))
            different += told != "No part changed."
            print(f"{source.name} as {kind}: {told}")
sys.exit(1 if different else 0)
