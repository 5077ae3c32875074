BEGIN { print "| page | median, ms | 95 of 100 within, ms |"; print "|---|---:|---:|" }
/^BenchmarkPartEdit/ {
  name = $1; sub(/^BenchmarkPartEdit\//, "", name); sub(/-[0-9]+$/, "", name)
  for (i = 2; i < NF; i++) { if ($(i+1) == "p50-ms") mid = $i; if ($(i+1) == "p95-ms") high = $i }
  printf "| %s | %.0f | %.0f |\n", name, mid, high
}
/^BenchmarkLongList/ {
  name = $1; sub(/^BenchmarkLongList\//, "", name); sub(/-[0-9]+$/, "", name)
  printf "| 10,000 jobs: %s | %.1f | |\n", name, $3 / 1e6
}
