/**
 * Parts that several pages show: the filters with their counts, what narrows a result, definitions
 * of an outcome, the panel from which a figure is taken away. Start at {@link
 * gapwise.server.page.part.FilterForm}.
 */
package gapwise.server.page.part;
