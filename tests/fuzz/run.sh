#!/usr/bin/env bash
# Looks for text that the program cannot take: ./run.sh any_text|near_lines|any_file [SECONDS] [further flags]
# What it finds stands in found/; `./run.sh TARGET 0 found/FILE` enters it again.
set -euo pipefail
cd "$(dirname "$0")"
target=$1 seconds=${2:-60}
shift; shift || true
host=$(rustc -vV | sed -n 's/^host: //p')
# Counters of every edge; with --target they stay out of build scripts.
export RUSTFLAGS="-Cpasses=sancov-module -Cllvm-args=-sanitizer-coverage-level=4 -Cllvm-args=-sanitizer-coverage-inline-8bit-counters -Cllvm-args=-sanitizer-coverage-pc-table -Cllvm-args=-sanitizer-coverage-trace-compares"
cargo build --release --locked --target "$host" --bin "$target"
mkdir -p "found" "seeds/$target"
case $target in
  any_text) python3 seeds.py "seeds/$target" ../corpus ;;
  any_file) cp ../boards/*.json "seeds/$target/" ;;
esac
length=600
[ "$target" = any_file ] && length=4000
if [ "$seconds" = 0 ]; then
  exec "target/$host/release/$target" "$@"
fi
# Lines are long from the beginning: a few bytes choose next to nothing.
exec "target/$host/release/$target" "seeds/$target" -max_total_time="$seconds" -timeout=60 -len_control=0 \
  -max_len="$length" -rss_limit_mb=4096 -artifact_prefix=found/ -print_final_stats=1 "$@"
