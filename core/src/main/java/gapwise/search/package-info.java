/**
 * The index derived from the evidence base: free text, filters, counts beside each filter.
 *
 * <p>Start at {@link gapwise.search.SearchRequest} and {@link gapwise.search.SearchAnswer}; {@link
 * gapwise.search.StudyIndex} is the index that follows a store. The only room that knows Lucene. It
 * finds arms; what is pooled, and what is left out, is decided by the room {@code selection}.
 */
package gapwise.search;
