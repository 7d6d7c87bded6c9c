/**
 * How the text of one cell stands for a value, both ways: {@code read(write(value))} equals the
 * value. One form one class. Start at {@link gapwise.exchange.form.CellForm}. Columns and sheets do
 * not belong here.
 */
package gapwise.exchange.form;
