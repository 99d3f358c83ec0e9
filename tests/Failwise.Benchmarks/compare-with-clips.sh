#!/usr/bin/env bash
# Times a cold diagnosis with the native program against CLIPS from Debian loading and running a forward-chaining program over
# 1,000 rules and 40 observations, both in one run. Usage: compare-with-clips.sh [RUNS]
set -eu
cd "$(dirname "$0")/../.."
runs=${1:-15}
if ! command -v clips >/dev/null; then
  apt-get update -q >/dev/null && apt-get install -y -q clips >/dev/null
fi
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

# 1,000 rules of two or three conditions over located observations, every tenth chained on another; 40 observations.
awk 'BEGIN {
  srand(7)
  print "(deftemplate seen (slot part) (slot pattern) (slot extent) (slot at))"
  print "(deftemplate finding (slot id))"
  for (i = 0; i < 1000; i++) {
    a = int(rand() * 120); b = int(rand() * 120); p = int(rand() * 60); q = int(rand() * 60)
    printf "(defrule r%d (seen (part p%d) (pattern w%d) (at ?n)) (or (seen (part p%d) (pattern w%d) (extent heavy|moderate)) (seen (part p%d) (at ?n)))", i, a, p, b, q, a
    if (i >= 100 && i % 10 == 0) printf " (finding (id f%d))", i - 100
    printf " => (assert (finding (id f%d))))\n", i
  }
  print "(deffacts bench"
  for (i = 0; i < 40; i++) printf "  (seen (part p%d) (pattern w%d) (extent moderate) (at %d))\n", (3 * i) % 120, (7 * i) % 60, i % 5 + 1
  print ")"
}' >"$work/rules.clp"
printf '(load "%s/rules.clp")\n(reset)\n(run)\n(exit)\n' "$work" >"$work/run.clp"

if [ ! -x artifacts/aot/failwise ]; then
  dotnet publish src/Failwise.Cli -c Release -r linux-x64 -p:PublishAot=true -o artifacts/aot >/dev/null
fi

measure() { # measure NAME COMMAND...: milliseconds of the whole process
  local name=$1 times=()
  shift
  for _ in $(seq "$runs"); do
    local start end
    start=$(date +%s%N)
    "$@" >/dev/null 2>&1 || true
    end=$(date +%s%N)
    times+=($(((end - start) / 100000)))
  done
  printf '%s\n' "${times[@]}" | sort -n | awk -v name="$name" '{ t[NR] = $1 / 10 } END { printf "%-44s min %7.1f  median %7.1f  max %7.1f ms\n", name, t[1], t[int((NR + 1) / 2)], t[NR] }' | tee -a "$work/out"
}

measure "CLIPS, load and run 1,000 rules" clips -f2 "$work/run.clp"
measure "failwise diagnose (native, text)" artifacts/aot/failwise diagnose examples/pump-engine
measure "failwise --version (native start alone)" artifacts/aot/failwise --version
cases=$(find tests/cases/published -name case.yaml | wc -l)
start=$(date +%s%N)
artifacts/aot/failwise rules score tests/cases/published >/dev/null 2>&1 || true
end=$(date +%s%N)
# CLIPS in batch: the rules are loaded once, then the facts are reset and run again and again.
{
  printf '(load "%s/rules.clp")\n' "$work"
  printf '(loop-for-count 2000 (reset) (run))\n(exit)\n'
} >"$work/batch.clp"
cstart=$(date +%s%N)
clips -f2 "$work/batch.clp" >/dev/null 2>&1
cend=$(date +%s%N)
awk -v f=$(((end - start) / 1000000)) -v n="$cases" -v c=$(((cend - cstart) / 1000000)) 'BEGIN {
  printf "batch: failwise %d cases in %.1f s = %.0f cases a second (chaining, inference, verdict, three baselines); CLIPS 2000 runs in %.1f s = %.0f a second (chaining only)\n", n, f / 1000, n * 1000 / f, c / 1000, 2000 * 1000 / c }'
awk '/^CLIPS/ { for (i = 1; i < NF; i++) if ($i == "median") c = $(i+1) } /diagnose/ { for (i = 1; i < NF; i++) if ($i == "median") f = $(i+1) } END { if (c > 0) printf "cold, median: failwise takes %.2f times the time of CLIPS\n", f / c }' "$work/out"
ls -l artifacts/aot/failwise | awk '{ printf "native program: %.1f MB\n", $5 / 1048576 }'
