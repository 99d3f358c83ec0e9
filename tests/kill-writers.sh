#!/usr/bin/env bash
# Pulls the plug on a process that writes a case, many times at random moments, and lets several processes write one case at once.
# Usage: tests/kill-writers.sh [KILLS [SEED]]; 1,000 kills by default (some minutes). Ends with 1 when anything was lost.
set -eu
cd "$(dirname "$0")/.."
dotnet build tests/Failwise.CaseWriter -c Release -v quiet
writer=tests/Failwise.CaseWriter/bin/Release/net10.0/Failwise.CaseWriter.dll
dotnet "$writer" kills "${1:-1000}" "${2:-1}"
dotnet "$writer" crowd 6 25
