#!/usr/bin/env python3
"""Whether letters.def is still what letters.py makes: card_letters.py FOLDER"""

import pathlib
import subprocess
import sys

folder = pathlib.Path(sys.argv[1])
made = subprocess.run([sys.executable, folder / "letters.py"], capture_output=True, text=True, check=True).stdout
if made != (folder / "letters.def").read_text():
    sys.exit("letters.def is not what letters.py makes, and cards of version 1 count on it")
