/**
 * Extraction templates to records and back, without loss. The columns are described once, as
 * values; the reader, the writer, the blank workbook and the open description of the tables come
 * from them.
 *
 * <p>Start at {@link gapwise.exchange.Import} and {@link gapwise.exchange.Export}; a new column is
 * one line in the class of its sheet, such as {@code StudySheet}. How a cell stands for a value is
 * told in {@code exchange.form}. Rules about records live in {@code evidence.check}; storing is
 * someone else's work.
 */
package gapwise.exchange;
