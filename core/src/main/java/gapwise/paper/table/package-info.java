/**
 * Tables out of the boxes of words: where on a page they stand, their rows and columns, cells that
 * span several, and their going on over a page break.
 *
 * <p>Start at {@link gapwise.paper.table.Tables}. What a cell means does not belong here.
 */
package gapwise.paper.table;
