/**
 * A paper turned into fields of the template: its tables through {@code untidy}, numbers of its
 * running text through {@code printed}, each with its place on a page.
 *
 * <p>Start at {@link gapwise.paper.reading.PaperFields}. Nothing is stored here, and what was found
 * in running text is asked unless its own words leave no doubt.
 */
package gapwise.paper.reading;
