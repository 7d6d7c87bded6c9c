/**
 * How long models take, and how long general-purpose libraries take for the same sums;
 * docs/performance.md tells the result. Not part of the tool.
 *
 * <p>Start at {@link gapwise.benchmark.AllBenchmarks}.
 */
package gapwise.benchmark;
