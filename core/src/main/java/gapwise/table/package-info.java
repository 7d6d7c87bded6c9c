/**
 * Rows with named columns out of a workbook or CSV files, streamed; every cell knows its sheet, row
 * and column, so that whoever finds fault with it can say where it stands.
 *
 * <p>Start at {@link gapwise.table.TableReader}. What a column means, units and comment rows belong
 * to whoever reads; writing files does too.
 */
package gapwise.table;
