"""The tests: a folder for each room of the package, the outside judges, and the benchmarks."""
