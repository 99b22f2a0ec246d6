"""Every bulletin in this folder is valid by the JSON schema of CAAML v6.

The schema lies in ../shared/standards beside the repository, or where FIRNBOOK_STANDARDS says. Without it, or without
python3-jsonschema, the test is skipped and says so.
"""
import glob
import json
import os
import sys

SKIPPED = 77
here = os.path.dirname(os.path.abspath(__file__))
standards = os.environ.get("FIRNBOOK_STANDARDS") or os.path.join(here, "..", "..", "..", "shared", "standards")
schema_file = os.path.join(standards, "caaml-bulletin", "v6", "CAAMLv6_BulletinEAWS.json")

try:
    import jsonschema
except ImportError:
    print("skipped: python3-jsonschema is not installed")
    sys.exit(SKIPPED)
if not os.path.exists(schema_file):
    print("skipped: the standard's schema is not there:", schema_file)
    sys.exit(SKIPPED)

with open(schema_file, encoding="utf-8") as file:
    validator = jsonschema.Draft7Validator(json.load(file), format_checker=jsonschema.FormatChecker())

files = sorted(glob.glob(os.path.join(here, "*.json")))
wrong = 0
for name in files:
    with open(name, encoding="utf-8") as file:
        bulletin = json.load(file)
    for error in validator.iter_errors(bulletin):
        print(os.path.basename(name), list(error.absolute_path), error.message)
        wrong += 1
    if "nvented" not in json.dumps(bulletin):
        print(os.path.basename(name), "does not say that it is invented")
        wrong += 1
if len(files) < 6:
    print("only", len(files), "bulletins in", here)
    wrong += 1
print(len(files), "bulletins,", wrong, "faults")
sys.exit(1 if wrong else 0)
