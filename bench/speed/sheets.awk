BEGIN { print "| sheet | ms | kB |"; print "|---|---:|---:|" }
/^Benchmark/ {
  name = $1; sub(/^Benchmark/, "", name); sub(/-[0-9]+$/, "", name); sub(/^Sheet\//, "", name); sub(/^AllSheets$/, "all", name)
  for (i = 2; i < NF; i++) { if ($(i+1) == "cpu-ms/op") ms = $i; if ($(i+1) == "bytes") kb = $i / 1000 }
  printf "| %s | %.0f | %.0f |\n", name, ms, kb
}
