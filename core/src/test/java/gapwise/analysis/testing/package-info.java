/**
 * Shared set-up of the tests of plans: {@link gapwise.analysis.testing.Plans} asks a plan and reads
 * its result, {@link gapwise.analysis.testing.Networks} writes the rows of a network, {@link
 * gapwise.analysis.testing.PublishedChecks} lists the published data with their expected values,
 * {@link gapwise.analysis.testing.RandomRows} makes rows at random.
 */
package gapwise.analysis.testing;
