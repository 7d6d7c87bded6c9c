/**
 * How fast searches and the map answer on large invented evidence bases, one user and many, beside
 * the same searches on the index alone. Run by a person, never among tests.
 *
 * <p>Start at {@link gapwise.load.LoadBenchmark}.
 */
package gapwise.load;
