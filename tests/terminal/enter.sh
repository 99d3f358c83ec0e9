#!/usr/bin/env bash
# Drives `case enter` in a real terminal of 80 columns through tmux, as somebody would who types, errs and takes back, and compares the
# case it leaves. Usage: enter.sh PROGRAM
set -eu
program=$(realpath "$1")
work=$(mktemp -d)
socket=failwise-$$
trap 'tmux -L "$socket" kill-server 2>/dev/null || true; rm -rf "$work"' EXIT

screen() { tmux -L "$socket" capture-pane -p -t t; }

await() { # await TEXT: until the screen shows it
  for _ in $(seq 150); do
    if screen | grep -qF -- "$1"; then return; fi
    sleep 0.1
  done
  echo "the screen never showed: $1"
  screen
  exit 1
}

keys() { tmux -L "$socket" send-keys -t t "$@"; }

text() { # text WORDS QUESTION: types words and Enter, waits for the next question
  keys -l "$1"
  keys Enter
  await "$2"
}

begin() { # begin COLUMNS ROWS ENVIRONMENT...: a fresh terminal at the case; a server of its own, since the last one may still be ending
  tmux -L "$socket" kill-server 2>/dev/null || true
  socket=$socket-
  tmux -L "$socket" -u new-session -d -s t -x "$1" -y "$2" "env ${*:3} '$program' case enter '$work'; echo ended with \$?; sleep 60"
  await 'What next?'
}

narrow_enough() { if screen | LC_ALL=C.UTF-8 grep -qE "^.{$(($1 + 1)),}"; then echo "wider than $1 columns"; screen; exit 1; fi; }

cat >"$work/case.yaml" <<'YAML'
title: Lower pump engine, knock
machine: {kind: engine, cylinders: 4, mains: 5, features: [diesel, pressure-fed]}
YAML

# Typing, an answer that is wrong, going back, undo.
begin 80 24 TERM=screen LC_ALL=C.UTF-8
text 'main bearing' 'Which one?'
text '7' 'there is no 7'
keys Escape # clears the wrong number
sleep 0.5
text '3' 'Where on it?'
text 'lower' 'How does it look?'
narrow_enough 80
text 'wiped' 'Others look like it'
keys Enter
await 'How much?'
grep -q 'see: wiped' "$work/case.yaml" # saved before the next answer
keys 4
await 'How sure'
keys 1
await 'the other ones'
keys 2
await 'What next?'
text 'RV stuk 4' "Did you mean 'stuck'"
for _ in 1 2 3 4 5 6 7 8 9; do keys BSpace; done
sleep 0.5
text 'RV stuck 4' 'Saved: {part: relief-valve, see: stuck'
text 'OF blocked 4' 'Saved: {part: oil-filter, see: blocked'
keys C-z
await 'Took back'

# Another size in the middle of it.
tmux -L "$socket" resize-window -t t -x 60 -y 20
sleep 1
narrow_enough 60
text 'q' 'ended with 0'

# No colour, letters of ASCII only, and the plug pulled: what was answered is there, and it goes on where it stopped.
begin 80 24 TERM=screen LC_ALL=C NO_COLOR=1
await 'Going on where it stopped'
if tmux -L "$socket" capture-pane -e -p -t t | grep -q $'\e\[[0-9;]*m'; then echo 'colour in spite of NO_COLOR'; exit 1; fi
if screen | LC_ALL=C grep -q '[^ -~]'; then echo 'more than ASCII'; screen; exit 1; fi
text 'CP4 blued 3' 'Saved: {part: rod-journal, at: 4'
tmux -L "$socket" kill-server
sleep 0.5

# A terminal that knows no cursor.
begin 80 24 TERM=dumb LC_ALL=C
text 'OP ok' 'Saved: {part: oil-pump, see: sound'
text 'q' 'ended with 0'

cat >"$work/expected.yaml" <<'YAML'
title: Lower pump engine, knock
machine: {kind: engine, cylinders: 4, mains: 5, features: [diesel, pressure-fed]}
observations:
  - {part: main-bearing, at: 3, on: lower, see: wiped, extent: heavy, rest: sound}
  - {part: relief-valve, see: stuck, extent: heavy}
  - {part: rod-journal, at: 4, see: blued, extent: moderate}
  - {part: oil-pump, see: sound}
YAML
diff "$work/expected.yaml" "$work/case.yaml"

# Without a keyboard it says so and touches nothing.
status=0
echo 'OP ok' | "$program" case enter "$work" >"$work/out.txt" 2>&1 || status=$?
[ "$status" -eq 2 ]
grep -q 'needs a keyboard' "$work/out.txt"
diff "$work/expected.yaml" "$work/case.yaml"
echo 'terminal sessions: all as expected'
