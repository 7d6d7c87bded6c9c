/**
 * A table that people made by hand, a colleague's sheet or a table of a paper, turned into fields
 * of the template, with every doubt told.
 *
 * <p>Start at {@link gapwise.untidy.UntidySheets}, which takes a file or a {@link
 * gapwise.untidy.Grid} of located texts and gives a {@link gapwise.untidy.Preview}. What one text
 * means is known in {@code printed}; how files are read, in {@code table}. Nothing is stored here:
 * what a person accepts becomes tables that {@code exchange} imports like any template.
 */
package gapwise.untidy;
