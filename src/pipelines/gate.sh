#!/bin/sh
# A gate for roof models in a pipeline. Lets a revision pass if it can be read and makes nothing worse than the last one that passed.
#
#   gate.sh MODEL KEPT
#
# MODEL is the revision to look at. KEPT is the result of the last revision that passed; where there is none yet, the first one makes it.
# What people accepted stands in decisions.json, if there is such a file: the service gives it out, or it is written by hand.
# The folder reports then has what pipelines show: JUnit XML (*.xml) as tests, SARIF (*.sarif) as findings, changes.txt to read.
# Exit status: 0 passes; 1 worse than before; 2 a setting is wrong; 3 the model can't be read.

set -eu
model=$1
kept=$2
seamledger=${SEAMLEDGER:-./seamledger}
reports=${REPORTS:-reports}
mkdir -p "$reports"
if [ -f decisions.json ]; then set -- --decisions decisions.json; else set --; fi

# What the model lacks by the specification is shown, and does not shut this gate: status 1 is let through, all others end here.
"$seamledger" check "$model" --ids "${IDS:-shapes/ids/roof-model.ids}" --format junit --output "$reports/model.xml" || [ $? -eq 1 ]

"$seamledger" analyze "$model" "$@" --format json --output "$reports/result.json"
"$seamledger" analyze "$model" "$@" --format sarif --output "$reports/findings.sarif"
if [ -f "$kept" ]; then
  "$seamledger" compare "$kept" "$reports/result.json" --fail-on new-warning --output "$reports/changes.txt"
fi
cp "$reports/result.json" "$kept"
